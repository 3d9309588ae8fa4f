package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.inspections.TestLine.Reply;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.web.server.LocalServerPort;
import tools.jackson.databind.JsonNode;

/**
 * From recordings over HTTP to what the certificate and batch addresses answer; lives here for the
 * line's tools.
 */
@InspectionTest
class PaperAndBatchTests {
  private static final String STATION = "bench-paper";
  private static boolean batchMade;
  private static String passed;
  private static String failed;

  @LocalServerPort private int port;
  private TestLine line;

  @BeforeEach
  void aBatchOfThreeUnits() {
    line = new TestLine(port);
    if (batchMade) {
      return;
    }
    line.makeStation(STATION);
    passed = inspect("FE-PAPER-1", "plain", 51, false).text("id");
    inspect("FE-PAPER-1", "warm", 53, false);
    failed = inspect("FE-PAPER-2", "plain", 55, true).text("id");
    inspect("FE-PAPER-3", "plain", 57, false);
    batchMade = true;
  }

  private Reply inspect(String serial, String tuning, long seed, boolean bump) {
    byte[] left = TestSound.wav(TestSound.capture(seed, TestSound.peak(3000, 6)));
    byte[] right =
        bump
            ? TestSound.wav(
                TestSound.capture(seed + 1, TestSound.peak(3000, 6), TestSound.peak(9000, 5)))
            : TestSound.wav(TestSound.capture(seed + 1, TestSound.peak(3000, 6)));
    Reply reply =
        line.inspect(
            TestLine.inspection(serial, tuning, STATION).replace("FB-1", "PB-1"), left, right);
    assertThat(reply.text("verdict")).as("%s", reply.json()).isEqualTo(bump ? "FAIL" : "PASS");
    return reply;
  }

  @Test
  void printsTheCertificateOfAPassedInspectionOnceItIsSealed() throws IOException {
    Reply reply = line.get("/api/inspections/" + passed + "/certificate?paper=letter");

    assertThat(reply.status()).as("%s", reply.json()).isEqualTo(200);
    assertThat(reply.raw().headers().firstValue("Content-Type")).hasValue("application/pdf");
    try (PDDocument document = Loader.loadPDF(reply.raw().body())) {
      assertThat(document.getNumberOfPages()).isEqualTo(1);
      assertThat(new PDFTextStripper().getText(document))
          .contains(
              "Fern 1",
              "FE-PAPER-1",
              "PB-1",
              STATION,
              "IEC 60318-4",
              passed,
              "bass",
              "mid",
              "treble")
          .containsPattern("[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4}-");
    }
    assertThat(line.get("/api/inspections/" + passed + "/certificate?paper=letter").raw().body())
        .isEqualTo(reply.raw().body());
  }

  @Test
  void refusesACertificateWithTheReasonUnlessItPassed() {
    Reply reply = line.get("/api/inspections/" + failed + "/certificate");

    assertThat(reply.status()).isEqualTo(409);
    assertThat(reply.text("type")).isEqualTo("/problems/not-passed");
    assertThat(reply.text("detail")).contains("its verdict is FAIL. ", "treble");
  }

  @Test
  void printsAUnitsCertificateWhenEveryRequiredTuningPassed() {
    assertThat(line.get("/api/units/FE-PAPER-1/certificate").status()).isEqualTo(200);

    Reply incomplete = line.get("/api/units/FE-PAPER-3/certificate");
    assertThat(incomplete.status()).isEqualTo(409);
    assertThat(incomplete.text("detail")).contains("not yet judged in warm");
    assertThat(line.get("/api/units/FE-PAPER-9/certificate").status()).isEqualTo(404);
  }

  @Test
  void printsALabelForAPassAndASlipForAFail() throws IOException {
    assertThat(textOf(line.get("/api/inspections/" + passed + "/label")))
        .contains("Fern 1", "PASS", "FE-PAPER-1");
    assertThat(textOf(line.get("/api/inspections/" + failed + "/rework-slip")))
        .contains("FAIL", "FE-PAPER-2", "Right · treble");

    Reply noLabel = line.get("/api/inspections/" + failed + "/label");
    assertThat(noLabel.status()).isEqualTo(409);
    assertThat(noLabel.text("type")).isEqualTo("/problems/not-passed");
    Reply noSlip = line.get("/api/inspections/" + passed + "/rework-slip");
    assertThat(noSlip.status()).isEqualTo(409);
    assertThat(noSlip.text("type")).isEqualTo("/problems/not-failed");
  }

  @Test
  void showsThePublicWhatTheCertificateWithThatCodeShows() throws IOException {
    String paper = textOf(line.get("/api/inspections/" + passed + "/certificate"));
    Matcher code = Pattern.compile("(?:[0-9A-Z]{4}-){5}[0-9A-Z*~$=]").matcher(paper);
    assertThat(code.find()).isTrue();

    JsonNode json = line.get("/api/certificates/" + code.group().replace("-", "")).json();

    assertThat(json.path("code").stringValue()).isEqualTo(code.group());
    assertThat(json.path("facts").path("inspection").stringValue()).isEqualTo(passed);
    assertThat(json.path("facts").path("serial").stringValue()).isEqualTo("FE-PAPER-1");
    assertThat(json.path("rows").size()).isPositive();
    json.path("rows")
        .forEach(
            row ->
                assertThat(paper)
                    .contains(
                        row.path("leftMargin").asString(""), row.path("rightValue").asString("")));
    assertThat(json.path("plot").path("difference").size()).isEqualTo(241);
  }

  @Test
  void tellsAMistypedCodeFromAnUnknownOne() {
    Reply mistyped = line.get("/api/certificates/ZZZZ-ZZZZ-ZZZZ-ZZZZ-ZZZZ-C");
    Reply unknown = line.get("/api/certificates/ZZZZ-ZZZZ-ZZZZ-ZZZZ-ZZZZ-B");

    assertThat(mistyped.status()).isEqualTo(400);
    assertThat(mistyped.text("detail")).contains("mistyped");
    assertThat(unknown.status()).isEqualTo(404);
    assertThat(unknown.text("type")).isEqualTo("/problems/unknown-code");
  }

  @Test
  void publishesItsKeysAndThePageThatChecks() {
    JsonNode keys = line.get("/api/certificates/keys").json().path("items");

    assertThat(keys.size()).isPositive();
    assertThat(keys.path(0).path("keyId").stringValue()).matches("[0-9a-f]{16}");
    Reply page = line.get("/check/ZZZZ-ZZZZ-ZZZZ-ZZZZ-ZZZZ-B");
    assertThat(page.status()).isEqualTo(200);
    assertThat(new String(page.raw().body(), StandardCharsets.UTF_8)).contains("check-page.js");
  }

  @Test
  void printsAWholeBatchAsOneJobAndNamesWhomItLeftOut() throws Exception {
    Reply started = line.post("/api/batches/PB-1/certificates", "{\"paper\":\"letter\"}");
    assertThat(started.status()).as("%s", started.json()).isEqualTo(202);
    String job = started.raw().headers().firstValue("Location").orElseThrow();

    JsonNode progress = line.get(job).json();
    while (!List.of("done", "failed").contains(progress.path("state").stringValue())) {
      Thread.sleep(100);
      progress = line.get(job).json();
    }

    assertThat(progress.path("state").stringValue()).as("%s", progress).isEqualTo("done");
    assertThat(progress.path("done").intValue()).isEqualTo(progress.path("total").intValue());
    JsonNode bundle = line.get(progress.path("result").stringValue()).json();
    assertThat(bundle.path("pages").intValue()).isEqualTo(1);
    assertThat(bundle.path("leftOut").size()).isEqualTo(1);
    assertThat(bundle.path("leftOut").path(0).path("serial").stringValue()).isEqualTo("FE-PAPER-3");
    assertThat(bundle.path("leftOut").path(0).path("reason").stringValue())
        .contains("not yet judged in warm");
    assertThat(textOf(line.get(bundle.path("links").path("pdf").stringValue())))
        .contains("FE-PAPER-1")
        .doesNotContain("FE-PAPER-3");
  }

  @Test
  void doesNotPrintABatchThatIsUnknown() {
    assertThat(line.post("/api/batches/PB-9/certificates", "{}").status()).isEqualTo(404);
  }

  private static String textOf(Reply reply) throws IOException {
    assertThat(reply.status()).as("%s", reply.json()).isEqualTo(200);
    assertThat(reply.raw().headers().firstValue("Content-Type")).hasValue("application/pdf");
    try (PDDocument document = Loader.loadPDF(reply.raw().body())) {
      return new PDFTextStripper().getText(document);
    }
  }

  @Test
  void namesThePapersThereAre() {
    Reply reply = line.get("/api/inspections/" + passed + "/certificate?paper=a3");

    assertThat(reply.status()).isEqualTo(400);
    assertThat(reply.json().path("choices").toString()).isEqualTo("[\"a4\",\"letter\"]");
  }

  @Test
  void countsTheBatch() {
    JsonNode json = line.get("/api/batches/PB-1/statistics?tuning=plain").json();

    assertThat(json.path("units").toString())
        .isEqualTo("{\"inspected\":3,\"passed\":2,\"failed\":1}");
    assertThat(json.path("yield").path("wilson").size()).isEqualTo(2);
    assertThat(
            json.path("reasons")
                .valueStream()
                .map(reason -> reason.path("text").stringValue())
                .toList())
        .contains(
            "Right earpiece outside its treble window", "Left and right differ too much in treble");
    assertThat(json.path("left").path("deviation").path("percentiles").path("97.5").size())
        .isEqualTo(241);
    assertThat(json.path("window").path("upperDb").path(136).doubleValue()).isEqualTo(1.5);
    assertThat(json.path("window").path("upperDb").path(240).isNull())
        .as("20 kHz lies in no region")
        .isTrue();
    // good units measure as golden to within 0.1 dB (the bar of the analysis and the chain's
    // rounding), so the median does
    assertThat(
            Math.abs(
                json.path("left")
                    .path("deviation")
                    .path("percentiles")
                    .path("50")
                    .path(136)
                    .doubleValue()))
        .isLessThan(0.1);
  }

  @Test
  void offersTheTuningsOfAMixedBatch() {
    Reply reply = line.get("/api/batches/PB-1/statistics");

    assertThat(reply.status()).isEqualTo(422);
    assertThat(reply.json().path("choices").size()).isEqualTo(2);
    assertThat(line.get("/api/batches/PB-9/statistics").status()).isEqualTo(404);
  }

  @Test
  void listsBatchesAndCurves() {
    JsonNode batches = line.get("/api/batches").json().path("items");
    JsonNode curves = line.get("/api/batches/PB-1/curves?tuning=plain&limit=2").json();

    assertThat(batches.valueStream().map(item -> item.path("batch").stringValue()).toList())
        .contains("PB-1");
    assertThat(curves.path("shown").intValue()).isEqualTo(2);
    assertThat(curves.path("of").intValue()).isEqualTo(3);
    assertThat(curves.path("units").path(1).path("rightDeviationDb").size()).isEqualTo(241);
    assertThat(line.get("/api/batches/PB-1/curves?tuning=plain&limit=0").status()).isEqualTo(400);
  }
}
