package evenpair.certificates;

import evenpair.inspections.Inspections.Inspection;
import evenpair.ledger.Ledger;
import evenpair.ledger.Ledger.Seal;
import java.util.Optional;
import org.springframework.stereotype.Component;

/** What the reader of a certificate checks it with. */
@Component
class CheckLink {
  private final PublicAddress address;
  private final Ledger ledger;

  CheckLink(PublicAddress address, Ledger ledger) {
    this.address = address;
    this.ledger = ledger;
  }

  Check of(Inspection inspection, Seal seal) {
    return address
        .pageOf(seal.code())
        .map(page -> new Check(page, address.checkPage()))
        .orElseGet(() -> new Check(SignedSummary.of(inspection, seal, ledger), Optional.empty()));
  }

  /**
   * @param qr what the QR code says: the page's address, or the signed summary
   * @param address of the public page where a code is typed in, if there is one
   */
  record Check(String qr, Optional<String> address) {}
}
