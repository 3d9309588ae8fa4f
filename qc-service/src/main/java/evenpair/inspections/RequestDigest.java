package evenpair.inspections;

import evenpair.ledger.Digests;
import evenpair.web.Refusal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.stream.Collectors;
import org.erdtman.jcs.JsonCanonicalizer;

/** What two requests with the same Idempotency-Key are compared by. */
final class RequestDigest {
  private RequestDigest() {}

  /**
   * @return SHA-256 over the canonical JSON (RFC 8785) and each file's name and SHA-256, in the
   *     order of names
   */
  static String of(SentParts parts) {
    String files =
        parts.files().stream()
            .map(file -> file.part() + ' ' + file.sha256())
            .sorted()
            .collect(Collectors.joining("\n"));
    return Digests.of(
        (canonical(parts.inspection()) + '\n' + files).getBytes(StandardCharsets.UTF_8));
  }

  private static String canonical(byte[] json) {
    try {
      return new JsonCanonicalizer(json).getEncodedString();
    } catch (IOException e) {
      throw new Refusal(
              400, "invalid-json", "The part 'inspection' is not valid JSON: " + e.getMessage())
          .with("part", "inspection");
    }
  }
}
