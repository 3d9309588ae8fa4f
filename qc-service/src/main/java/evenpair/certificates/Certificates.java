package evenpair.certificates;

import evenpair.certificates.CertificateSheet.Facts;
import evenpair.certificates.CertificateSheet.TuningVerdict;
import evenpair.inspections.Inspections;
import evenpair.inspections.Inspections.Inspection;
import evenpair.inspections.Inspections.JudgedCurves;
import evenpair.ledger.Ledger.Seal;
import evenpair.print.PageOverflow;
import evenpair.print.PaperSize;
import evenpair.print.Printer;
import evenpair.print.Sheet;
import evenpair.products.Products;
import evenpair.web.Refusal;
import evenpair.web.Texts;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.springframework.stereotype.Service;

/** Finds what a certificate says, refuses where there is nothing to certify, and has it printed. */
@Service
class Certificates {
  private final Inspections inspections;
  private final Products products;
  private final SealWait seals;
  private final CheckLink links;
  private final Printer printer;
  private final Texts texts;

  Certificates(
      Inspections inspections,
      Products products,
      SealWait seals,
      CheckLink links,
      Printer printer,
      Texts texts) {
    this.inspections = inspections;
    this.products = products;
    this.seals = seals;
    this.links = links;
    this.printer = printer;
    this.texts = texts;
  }

  /**
   * @return the certificate of one inspection
   * @throws Refusal 404 for an unknown inspection, 409 unless its verdict is PASS
   * @throws NotYetSealed if its record has no seal after some seconds
   */
  Page ofInspection(UUID id, PaperSize paper, Locale locale) {
    Inspection inspection = Verdicts.find(inspections, id);
    Verdicts.require("PASS", inspection, "certificate");
    return print(
        sheet(inspection, List.of(), paper, locale), inspection.serial(), inspection.tuning());
  }

  /**
   * @return the certificate of a unit: the page of its first required tuning, with the verdicts in
   *     all
   * @throws Refusal 404 for an unknown serial, 409 unless every required tuning has passed
   * @throws NotYetSealed if a record has no seal after some seconds
   */
  Page ofUnit(String serial, PaperSize paper, Locale locale) {
    return print(sheetOfUnit(serial, paper, locale), serial, "unit");
  }

  /**
   * @return what {@link #ofUnit} prints
   */
  Sheet sheetOfUnit(String serial, PaperSize paper, Locale locale) {
    List<Inspection> all = inspections.ofUnit(serial);
    if (all.isEmpty()) {
      throw new Refusal(
          404, "unknown-serial", "No unit with serial " + serial + " has been inspected.");
    }
    UnitTunings tunings = UnitTunings.of(all, required(all.get(all.size() - 1).product()));
    tunings.requirePass();
    List<TuningVerdict> verdicts =
        tunings.closed().stream()
            .map(closed -> new TuningVerdict(closed, seals.sealOf(closed.id())))
            .toList();
    return sheet(tunings.first(), verdicts, paper, locale);
  }

  private List<String> required(String product) {
    return products
        .find(product)
        .orElseThrow(
            () ->
                new Refusal(
                    409,
                    "unknown-product",
                    "The unit's product " + product + " is no longer known."))
        .tunings()
        .stream()
        .filter(Products.Tuning::required)
        .map(Products.Tuning::key)
        .toList();
  }

  /**
   * @return what {@link #ofInspection} prints
   */
  Sheet sheet(Inspection inspection, List<TuningVerdict> tunings, PaperSize paper, Locale locale) {
    JudgedCurves curves =
        inspections
            .curves(inspection.id())
            .orElseThrow(
                () ->
                    new IllegalStateException(
                        "inspection " + inspection.id() + " passed without curves"));
    String digest = products.limitSet(inspection.limitSetId()).digest();
    Seal seal = seals.sealOf(inspection.id());
    Facts facts = new Facts(inspection, curves, digest, seal, links.of(inspection, seal), tunings);
    return new CertificateSheet(new Wording(texts, locale)).of(facts, paper);
  }

  private Page print(Sheet sheet, String serial, String part) {
    try {
      return new Page("certificate-" + serial + "-" + part + ".pdf", printer.print(sheet));
    } catch (PageOverflow e) {
      throw tooLong(e);
    }
  }

  static Refusal tooLong(PageOverflow overflow) {
    return new Refusal(
        409,
        "too-many-regions",
        "The limit set's "
            + overflow.rows()
            + " rows do not fit on the one page of a certificate.");
  }

  /**
   * @param fileName what a browser saves it as
   */
  record Page(String fileName, byte[] pdf) {}
}
