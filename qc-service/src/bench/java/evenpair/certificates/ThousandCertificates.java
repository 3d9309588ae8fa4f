package evenpair.certificates;

import evenpair.print.PagesPrinter;
import evenpair.print.PdfJoin;
import evenpair.print.Sheet;
import evenpair.print.TestPrinter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Prints a batch's certificates as its job does, in steps, and joins them as its download does; no
 * database. Prints how long it took and how large the document is.
 */
public final class ThousandCertificates {
  private static final int UNITS = Integer.getInteger("certificates", 1000);

  private ThousandCertificates() {}

  /** Takes no arguments; the system property {@code certificates} sets their number. */
  public static void main(String[] args) throws IOException {
    PagesPrinter printer = TestPrinter.pagesWith(Paper.TEXTS);
    printer.printTogether(sheets(0)); // loads layouts and typefaces
    long start = System.nanoTime();
    List<byte[]> parts = new ArrayList<>();
    for (int from = 0; from < UNITS; from += BatchPrinting.A_STEP) {
      parts.add(printer.printTogether(sheets(from)));
    }
    long printed = System.nanoTime();
    ByteArrayOutputStream joined = new ByteArrayOutputStream();
    PdfJoin.join(parts.iterator(), joined);
    long end = System.nanoTime();
    System.out.printf(
        "%d certificates: printed in %.1f s, joined in %.1f s, %.1f MB%n",
        UNITS, (printed - start) / 1e9, (end - printed) / 1e9, joined.size() / 1e6);
  }

  private static List<Sheet> sheets(int from) {
    return IntStream.range(from, Math.min(UNITS, from + BatchPrinting.A_STEP))
        .mapToObj(i -> CertificateBenchmark.sheet("SG2-%06d".formatted(i)))
        .toList();
  }
}
