package evenpair.certificates;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BarcodeFormat;
import evenpair.print.PaperSize;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class SignedSummaryTests {
  @TempDir Path folder;

  private final String summary =
      SignedSummary.of(PassedPair.inspection(), Paper.seal(), Paper.LEDGER);
  private Path key;

  @BeforeEach
  void thePublishedKey() throws IOException {
    key = written("maker.pub", Paper.LEDGER);
  }

  private Path written(String name, SigningLedger ledger) throws IOException {
    byte[] encoded = ledger.publicKeys().values().iterator().next();
    return Files.writeString(
        folder.resolve(name),
        "-----BEGIN PUBLIC KEY-----\n"
            + Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(encoded)
            + "\n-----END PUBLIC KEY-----\n");
  }

  @Test
  void carriesKeyDigestSerialVerdictAndDate() {
    assertThat(summary)
        .matches(
            "EVENPAIR-1 [0-9a-f]{16} [\\w-]{43} SG2-004217 PASS 2026-11-25T07:45:12Z [\\w-]{86}");
  }

  @Test
  void isAcceptedByTheCommandWithTheMakersKey() {
    Said said = check(key, summary);

    assertThat(said.exitCode()).isZero();
    assertThat(said.text()).contains("SG2-004217", "PASS", "2026-11-25T07:45:12Z");
  }

  @ParameterizedTest
  @CsvSource({
    "SG2-004217, SG2-004218",
    "PASS, FAIL",
    "2026-11-25, 2026-11-24",
    "EVENPAIR-1, EVENPAIR-2"
  })
  void isNotAcceptedOnceAnythingWasChanged(String was, String became) {
    assertThat(check(key, summary.replace(was, became)).exitCode()).isPositive();
  }

  @Test
  void isNotAcceptedWithACutSignatureOrAnotherKey() throws IOException {
    assertThat(check(key, summary.substring(0, summary.length() - 4)).exitCode()).isEqualTo(1);
    Said other = check(written("other.pub", new SigningLedger()), summary);
    assertThat(other.exitCode()).isEqualTo(1);
    assertThat(other.text()).contains("but the key given is");
  }

  @Test
  void saysWhenWhatIsGivenCannotBeRead() throws IOException {
    Path noKey = Files.writeString(folder.resolve("no.pub"), "not a key");

    assertThat(check(noKey, summary).exitCode()).isEqualTo(2);
    assertThat(check(folder.resolve("missing.pub"), summary).exitCode()).isEqualTo(2);
    assertThat(check(key, "https://quality.saltmarsh.example/").exitCode()).isEqualTo(2);
  }

  @ParameterizedTest
  @EnumSource(PaperSize.class)
  void isReadFromThePrintedCertificateWhereNoPageIsPublic(PaperSize size) {
    byte[] pdf = Paper.print(PassedPair.inspection(), PassedPair.REGIONS, List.of(), size);

    assertThat(Scanner.scanNearer(pdf, BarcodeFormat.QR_CODE, 300, 400, 600)).hasValue(summary);
    assertThat(PrintedPage.of("summary-" + size.word(), pdf).joined())
        .contains("Thesquareholdstherecord'ssignedsummary");
  }

  @Test
  void fitsWithTheLongestSerialInChineseToo() {
    String serial = "左耳".repeat(16) + "-123456789_123456789_123456789.A";
    byte[] pdf =
        Paper.print(
            PassedPair.named(
                "Sedge 2", "Saltmarsh Works", serial, "plain", PassedPair.inspection().regions()),
            PassedPair.REGIONS,
            List.of(),
            PaperSize.A4);

    assertThat(serial).hasSize(64);
    assertThat(Scanner.scanNearer(pdf, BarcodeFormat.QR_CODE, 300, 400, 600))
        .hasValueSatisfying(text -> assertThat(text).contains(" " + serial + " PASS "));
  }

  @Test
  void leadsToThePublicPageWhereThereIsOne() {
    byte[] pdf =
        Paper.print(
            PassedPair.inspection(),
            PassedPair.REGIONS,
            List.of(),
            PaperSize.A4,
            "https://quality.saltmarsh.example/");

    assertThat(Scanner.scanNearer(pdf, BarcodeFormat.QR_CODE, 200, 300, 600))
        .hasValue("https://quality.saltmarsh.example/check/7K2M9QDX0V4TRB8H3ZJN5");
    assertThat(PrintedPage.of("public-a4", pdf).joined())
        .contains("typesthecodeathttps://quality.saltmarsh.example/check,");
  }

  private Said check(Path publishedKey, String text) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    int exitCode =
        CheckSummary.run(
            new String[] {publishedKey.toString(), text},
            new PrintStream(out, true, StandardCharsets.UTF_8));
    return new Said(exitCode, out.toString(StandardCharsets.UTF_8));
  }

  private record Said(int exitCode, String text) {}
}
