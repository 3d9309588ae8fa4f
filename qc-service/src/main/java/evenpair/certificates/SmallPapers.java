package evenpair.certificates;

import evenpair.certificates.Certificates.Page;
import evenpair.inspections.Inspections;
import evenpair.inspections.Inspections.Inspection;
import evenpair.print.PagesPrinter;
import evenpair.print.Sheet;
import evenpair.web.Refusal;
import evenpair.web.Texts;
import java.util.Locale;
import java.util.UUID;
import org.springframework.stereotype.Service;

/** The label of a pair that passed, and the slip that goes with one that failed to rework. */
@Service
class SmallPapers {
  private final Inspections inspections;
  private final SealWait seals;
  private final PublicAddress address;
  private final PagesPrinter printer;
  private final Texts texts;

  SmallPapers(
      Inspections inspections,
      SealWait seals,
      PublicAddress address,
      PagesPrinter printer,
      Texts texts) {
    this.inspections = inspections;
    this.seals = seals;
    this.address = address;
    this.printer = printer;
    this.texts = texts;
  }

  /**
   * @return a label of 50 mm × 30 mm
   * @throws Refusal 404 for an unknown inspection, 409 unless its verdict is PASS
   * @throws NotYetSealed if codes lead to the public page and the record has no seal after some
   *     seconds
   */
  Page label(UUID id, Locale locale) {
    Inspection inspection = Verdicts.find(inspections, id);
    Verdicts.require("PASS", inspection, "label");
    String qr =
        address.isPublic()
            ? address.pageOf(seals.sealOf(id).code()).orElseThrow()
            : inspection.serial();
    return page("label", inspection, new LabelSheet(new Wording(texts, locale)).of(inspection, qr));
  }

  /**
   * @return a slip of A6, more pages where the reasons need them
   * @throws Refusal 404 for an unknown inspection, 409 unless its verdict is FAIL
   */
  Page reworkSlip(UUID id, Locale locale) {
    Inspection inspection = Verdicts.find(inspections, id);
    Verdicts.require("FAIL", inspection, "rework slip");
    return page(
        "rework-slip", inspection, new SlipSheet(new Wording(texts, locale)).of(inspection));
  }

  private Page page(String paper, Inspection inspection, Sheet sheet) {
    return new Page(
        paper + "-" + inspection.serial() + "-" + inspection.tuning() + ".pdf",
        printer.printPages(sheet));
  }
}
