package evenpair.certificates;

import evenpair.certificates.CertificateSheet.Facts;
import evenpair.certificates.CertificateSheet.TuningVerdict;
import evenpair.inspections.Inspections.Inspection;
import evenpair.inspections.Inspections.RegionSpan;
import evenpair.ledger.Ledger.Seal;
import evenpair.print.PaperSize;
import evenpair.print.Printer;
import evenpair.print.Sheet;
import evenpair.print.TestPrinter;
import evenpair.web.TestTexts;
import evenpair.web.Texts;
import java.util.List;
import java.util.Locale;
import java.util.UUID;

/** Prints invented certificates for tests. */
final class Paper {
  static final Texts TEXTS = TestTexts.real();
  static final Printer PRINTER = TestPrinter.with(TEXTS);
  static final SigningLedger LEDGER = new SigningLedger();
  static final String DIGEST = "9f2c41d0a7b35e6844c1d2e3f4a5b6c7d8e9f00112233445566778899aabbcc";

  private Paper() {}

  static Seal seal() {
    return new Seal(
        new UUID(1, 2), "5e".repeat(32), 17, "7K2M-9QDX-0V4T-RB8H-3ZJN-5", "00112233aabbccdd");
  }

  static byte[] print(
      Inspection inspection,
      List<RegionSpan> regions,
      List<TuningVerdict> tunings,
      PaperSize size) {
    return print(inspection, regions, tunings, size, "");
  }

  static byte[] print(
      Inspection inspection,
      List<RegionSpan> regions,
      List<TuningVerdict> tunings,
      PaperSize size,
      String publicUrl) {
    return PRINTER.print(sheet(inspection, regions, tunings, size, publicUrl));
  }

  static Sheet sheet(Inspection inspection, PaperSize size) {
    return sheet(inspection, PassedPair.REGIONS, List.of(), size, "");
  }

  private static Sheet sheet(
      Inspection inspection,
      List<RegionSpan> regions,
      List<TuningVerdict> tunings,
      PaperSize size,
      String publicUrl) {
    Facts facts =
        new Facts(
            inspection,
            PassedPair.curves(regions),
            DIGEST,
            seal(),
            new CheckLink(new PublicAddress(publicUrl), LEDGER).of(inspection, seal()),
            tunings);
    return new CertificateSheet(new Wording(TEXTS, Locale.ENGLISH)).of(facts, size);
  }
}
