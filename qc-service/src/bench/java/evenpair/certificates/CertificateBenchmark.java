package evenpair.certificates;

import evenpair.print.PagesPrinter;
import evenpair.print.PaperSize;
import evenpair.print.Sheet;
import evenpair.print.TestPrinter;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** What the pages cost once everything is loaded; no database. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class CertificateBenchmark {
  private final PagesPrinter printer = TestPrinter.pagesWith(Paper.TEXTS);
  private final List<Sheet> sheets =
      IntStream.range(0, BatchPrinting.A_STEP)
          .mapToObj(i -> sheet("SG2-%06d".formatted(i)))
          .toList();

  static Sheet sheet(String serial) {
    return Paper.sheet(
        PassedPair.named(
            "Sedge 2", "Saltmarsh Works", serial, "plain", PassedPair.inspection().regions()),
        PaperSize.A4);
  }

  /** One certificate as a document of its own, signed and with its square. */
  @Benchmark
  public byte[] certificatePage() {
    return Paper.PRINTER.print(sheet("SG2-004217"));
  }

  /** One step of a batch's certificates. */
  @Benchmark
  public byte[] tenCertificatesTogether() {
    return printer.printTogether(sheets);
  }
}
