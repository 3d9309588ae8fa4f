package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.inspections.TestLine.Reply;
import java.io.IOException;
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
