package evenpair.batches;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.when;

import evenpair.access.People;
import evenpair.acoustics.EarSimulator;
import evenpair.inspections.Inspections;
import evenpair.inspections.Inspections.BatchCurves;
import evenpair.inspections.Inspections.BatchSummary;
import evenpair.print.PaperSize;
import evenpair.print.TestPrinter;
import evenpair.products.Products;
import evenpair.products.Products.Product;
import evenpair.products.Products.StoredLimitSet;
import evenpair.products.Products.Tuning;
import evenpair.products.Products.VersionFacts;
import evenpair.tolerance.Drive;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.LimitSet.DecisionRule;
import evenpair.web.Software;
import evenpair.web.TestTexts;
import evenpair.web.Texts;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Every report printed here is left in {@code target/paper}, to be looked at. */
class BatchReportTests {
  private static final Texts TEXTS = TestTexts.real();
  private static final String DIGEST =
      "9f2c41d0a7b35e6844c1d2e3f4a5b6c7d8e9f00112233445566778899aabbcc0";
  private static final LimitSet SET =
      GoldenLine.limits("plain", 3, new Drive.Voltage(180), new DecisionRule(false, 0, false));
  private static final UUID ENGINEER = new UUID(6, 6);

  private final People people = mock(People.class);

  private byte[] report(BatchCurves curves, PaperSize size) {
    Inspections inspections = mock(Inspections.class);
    when(inspections.batches())
        .thenReturn(
            List.of(
                new BatchSummary(
                    "SW-2647", "sedge-2", List.of("plain"), List.of(3), 1, LotChange.START)));
    when(inspections.batchCurves(any(), any(), any(), any())).thenReturn(curves);
    when(people.nameOf(ENGINEER)).thenReturn(Optional.of("盐沼 qe-2"));
    Software software = mock(Software.class);
    when(software.version()).thenReturn("0.1.0");
    BatchReports reports =
        new BatchReports(
            new Selection(inspections),
            products(),
            people,
            TestPrinter.flowWith(TEXTS),
            TEXTS,
            software);
    return reports.report(
        "SW-2647", new Part(null, null, null, null, null, null), size, Locale.ENGLISH);
  }

  private static Products products() {
    Products products = mock(Products.class);
    when(products.find("sedge-2"))
        .thenReturn(
            Optional.of(
                new Product(
                    "sedge-2",
                    "Sedge 2",
                    "Saltmarsh Works",
                    "SG2-\\d{6}",
                    EarSimulator.IEC_60318_4,
                    List.of(new Tuning("plain", true)))));
    when(products.limitSet("sedge-2", "plain", 3))
        .thenReturn(
            Optional.of(
                new StoredLimitSet(new UUID(3, 3), SET, new UUID(9, 9), null, DIGEST, null)));
    when(products.limitSetHistory("sedge-2", "plain"))
        .thenReturn(
            List.of(
                version(2, Optional.empty(), Optional.empty(), Instant.EPOCH),
                version(
                    3,
                    Optional.of(ENGINEER),
                    Optional.of("Batch SW-2640 sits 0.3 dB inside the old treble window."),
                    LotChange.START)));
    return products;
  }

  private static VersionFacts version(
      int version, Optional<UUID> approver, Optional<String> reason, Instant from) {
    return new VersionFacts(
        version,
        DIGEST,
        LotChange.START,
        Optional.of(LotChange.START),
        approver,
        reason,
        Optional.of(from));
  }

  @ParameterizedTest
  @CsvSource({"5, A4", "5, LETTER", "40, A4", "1000, A4", "1000, LETTER"})
  void isAFewPagesWhateverTheSizeOfTheBatch(int units, PaperSize size) throws IOException {
    BatchCurves curves =
        new LotChange(units, 7).failing(9).secondBench(0.3).from(units / 2, 0.5).curves();

    Printed printed = Printed.of("report-" + units + "-" + size.word(), report(curves, size));

    assertThat(printed.pages()).isBetween(3, 6);
    assertThat(printed.text())
        .contains(
            "Batch report: SW-2647, Sedge 2",
            "Saltmarsh Works",
            "95 % interval",
            "Capability",
            "Deviation from golden, dB",
            "Share of units that failed",
            "Batch SW-2640 sits 0.3",
            "盐沼 qe-2",
            "file in limits/",
            "Prepared by",
            "Page 1 of " + printed.pages(),
            "Page " + printed.pages() + " of " + printed.pages());
    assertThat(printed.unembedded()).isEmpty();
    assertThat(printed.rasterImages()).isZero();
  }

  @Test
  void saysWhatFewUnitsCannotTell() throws IOException {
    Printed printed = Printed.of("report-few", report(new LotChange(3, 7).curves(), PaperSize.A4));

    assertThat(printed.text()).contains("Too few units", "3 of 3 units", "No unit failed.");
    assertThat(printed.pages()).isBetween(3, 6);
  }

  @Test
  void countsAndNamesWhatTheStatisticsDo() throws IOException {
    // every ninth of 90 fails, on the right in the treble: 80 of 90 pass at first, 88.9 %
    BatchCurves curves = new LotChange(90, 7).failing(9).secondBench(1.0).curves();

    Printed printed = Printed.of("report-90", report(curves, PaperSize.A4));

    assertThat(printed.text())
        .contains("80 of 90 units passed at their first inspection, 88.9 %")
        .contains("bench-2 reads", "against bench-1");
  }

  @ParameterizedTest
  @EnumSource(PaperSize.class)
  void isTheSameBytesForTheSameBatch(PaperSize size) {
    BatchCurves curves = new LotChange(30, 7).failing(9).curves();

    assertThat(report(curves, size)).isEqualTo(report(curves, size));
  }

  private record Printed(int pages, String text, List<String> unembedded, int rasterImages) {
    static Printed of(String name, byte[] pdf) throws IOException {
      Path folder = Files.createDirectories(Path.of("target", "paper"));
      Files.write(folder.resolve(name + ".pdf"), pdf);
      try (PDDocument document = Loader.loadPDF(pdf)) {
        List<String> unembedded = new ArrayList<>();
        int images = 0;
        for (PDPage page : document.getPages()) {
          PDResources resources = page.getResources();
          for (COSName font : resources.getFontNames()) {
            if (!resources.getFont(font).isEmbedded()) {
              unembedded.add(resources.getFont(font).getName());
            }
          }
          for (COSName object : resources.getXObjectNames()) {
            images += resources.getXObject(object) instanceof PDImageXObject ? 1 : 0;
          }
        }
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setSortByPosition(true);
        String text = stripper.getText(document).replaceAll("[ \\u00a0]+", " ");
        return new Printed(document.getNumberOfPages(), text, unembedded, images);
      }
    }
  }
}
