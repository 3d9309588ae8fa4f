package evenpair.certificates;

import evenpair.inspections.Inspections.Inspection;
import evenpair.ledger.Ledger;
import evenpair.ledger.Ledger.Seal;
import evenpair.ledger.Ledger.Signed;
import java.time.temporal.ChronoUnit;
import java.util.Base64;
import java.util.HexFormat;

/**
 * A certificate's facts in one signed line, for a service that the public cannot reach:
 *
 * <pre>EVENPAIR-1 ‹key id› ‹digest of the sealed entry› ‹serial› ‹verdict› ‹when, UTC› ‹signature›
 * </pre>
 *
 * <p>The parts are parted by one space; digest (SHA-256) and signature (Ed25519 over the UTF-8
 * bytes of everything before the last space) are base64url without padding (RFC 4648, section 5).
 * {@link CheckSummary} checks it, and so does the page {@code /public/summary.html}.
 */
final class SignedSummary {
  static final String FORM = "EVENPAIR-1";

  private static final Base64.Encoder BASE64 = Base64.getUrlEncoder().withoutPadding();

  private SignedSummary() {}

  static String of(Inspection inspection, Seal seal, Ledger ledger) {
    // The key's name stands inside what is signed, so it has to be known beforehand.
    String keyId = ledger.sign("which key is it").keyId();
    String facts =
        String.join(
            " ",
            FORM,
            keyId,
            BASE64.encodeToString(HexFormat.of().parseHex(seal.entryDigest())),
            inspection.serial(),
            inspection.verdict(),
            inspection.closedAt().truncatedTo(ChronoUnit.SECONDS).toString());
    Signed signed = ledger.sign(facts);
    return facts + " " + BASE64.encodeToString(signed.signature());
  }
}
