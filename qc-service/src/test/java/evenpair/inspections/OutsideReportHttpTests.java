package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.inspections.TestLine.Reply;
import java.io.IOException;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.JsonNode;

/** A reviewer's curves against the record, over HTTP, in the dialects that reviewers send. */
@InspectionTest
class OutsideReportHttpTests {
  private static final String SERIAL = "FE-O1";
  private static final String PATH = "/api/units/" + SERIAL + "/outside-reports";
  private static final String KNOWN =
      """
      {"tuning": "plain", "rig": {"earSimulator": "IEC 60318-4", "uncertaintyDb": 0.5, "levelled": false},
       "source": {"name": "A reader's letter", "publishedOn": "2026-11-20"}}
      """;

  @LocalServerPort private int port;
  @Autowired private JdbcClient jdbc;
  private TestLine line;
  private JsonNode curves;

  @BeforeAll
  void measured() {
    line = new TestLine(port);
    line.makeStation("bench-outside");
    byte[] left = TestSound.wav(TestSound.capture(801, TestSound.peak(3000, 6)));
    byte[] right = TestSound.wav(TestSound.capture(802, TestSound.peak(3000, 6)));
    Reply made = line.inspect(TestLine.inspection(SERIAL, "plain", "bench-outside"), left, right);
    assertThat(made.status()).as("%s", made.json()).isEqualTo(201);
    curves = line.get("/api/inspections/" + made.text("id") + "/curves?smoothing=none").json();
  }

  /** The recorded level of one side with something added, another level of reference. */
  private String csv(String side, String separator, String decimal, DoubleUnaryOperator addedDb) {
    StringBuilder text = new StringBuilder("# measured elsewhere\n");
    for (int i = 0; i < curves.path("frequencyHz").size(); i++) {
      double hz = curves.path("frequencyHz").path(i).asDouble();
      double db =
          curves.path(side).path("levelDb").path(i).asDouble() - 9 + addedDb.applyAsDouble(hz);
      text.append(
          String.format(Locale.ROOT, "%.4f%s%.3f%n", hz, separator, db).replace(".", decimal));
    }
    return text.toString();
  }

  private Reply report(String query, Multipart parts) {
    return line.post(PATH + query, parts.end());
  }

  @Test
  void agreesWithTheSameTruthInAnotherSeatingAndKeepsTheAnswer() {
    Reply reply =
        report(
            "",
            new Multipart()
                .json("report", KNOWN)
                .csv("left", csv("left", "\t", ".", hz -> hz < 100 ? -0.4 : 0))
                .csv("right", csv("right", "\t", ".", hz -> hz < 100 ? -0.6 : 0)));
    assertThat(reply.status()).as("%s", reply.json()).isEqualTo(201);
    assertThat(reply.text("outcome")).isIn("AGREES", "CANNOT_TELL");
    assertThat(reply.json().path("regions"))
        .allMatch(region -> Math.abs(region.path("en").asDouble(9)) <= 1);
    assertThat(reply.json().at("/source/name").asString()).isEqualTo("A reader's letter");

    Reply again = line.get(reply.json().at("/links/self").asString());
    assertThat(again.json().path("regions")).isEqualTo(reply.json().path("regions"));
    assertThat(again.text("headline")).isEqualTo(reply.text("headline"));
    assertThat(line.get(PATH).json().path("items")).isNotEmpty();
    // who took it in is on record by reference; who published it is not in what is sealed
    assertThat(
            jdbc.sql("select received_by is not null from outside_report where serial = ? limit 1")
                .param(SERIAL)
                .query(Boolean.class)
                .single())
        .isTrue();
    String sealed =
        jdbc.sql("select string_agg(convert_from(content, 'UTF8'), '') from ledger_entry")
            .query(String.class)
            .single();
    assertThat(sealed).contains("outside-report").doesNotContain("reader's letter");
  }

  @Test
  void tellsAUnitThatChangedFromOneThatDidNot() {
    Reply reply =
        report(
            "?keep=false",
            new Multipart()
                .json("report", KNOWN)
                .csv("left", csv("left", ";", ",", hz -> hz < 6000 ? 0 : -7))
                .csv("right", csv("right", ";", ",", hz -> 0)));
    assertThat(reply.status()).as("%s", reply.json()).isEqualTo(200);
    assertThat(reply.text("outcome")).isEqualTo("DISAGREES");
    assertThat(reply.text("headline")).contains("disagree in");
    assertThat(reply.json().path("id").isNull()).isTrue();
  }

  @Test
  void readsBothChannelsFromOneFile() {
    String left = csv("left", " ", ".", hz -> 4);
    String right = csv("right", " ", ".", hz -> 0);
    StringBuilder both = new StringBuilder();
    String[] leftLines = left.split("\\R");
    String[] rightLines = right.split("\\R");
    for (int i = 1; i < leftLines.length; i++) {
      both.append(leftLines[i]).append(' ').append(rightLines[i].split(" ")[1]).append('\n');
    }
    Reply reply =
        report("?keep=false", new Multipart().json("report", KNOWN).csv("both", both.toString()));
    assertThat(reply.status()).as("%s", reply.json()).isEqualTo(200);
    assertThat(reply.text("outcome")).isEqualTo("DISAGREES");
    // 4 dB were added to the left by hand; the file carries three decimals
    double ours = reply.json().at("/regions/0/oursDb").asDouble();
    assertThat(reply.json().at("/regions/0/theirsDb").asDouble()).isCloseTo(ours + 4, within(2e-3));
  }

  @Test
  void saysThatAnAverageOfBothChannelsTellsNothing() {
    Reply reply =
        report("?keep=false", new Multipart().csv("average", csv("left", ",", ".", hz -> 0)));
    assertThat(reply.status()).as("%s", reply.json()).isEqualTo(200);
    assertThat(reply.json().path("averageOnly").asBoolean()).isTrue();
    assertThat(reply.text("headline")).contains("cannot be judged from an average");
    assertThat(reply.json().path("questions")).hasSize(1);
  }

  @Test
  void refusesWhatCannotBeReadNamingPartPlaceAndMend() {
    Reply reply =
        report(
            "?keep=false",
            new Multipart().csv("left", "20 80\n30 oops\n").csv("right", "20 80\n30 81\n"));
    assertThat(reply.status()).isEqualTo(422);
    assertThat(reply.text("part")).isEqualTo("left");
    assertThat(reply.text("place")).isEqualTo("line 2, column 2");
    Reply alone = report("?keep=false", new Multipart().csv("left", "20 80\n30 81\n"));
    assertThat(alone.status()).isEqualTo(400);
    assertThat(alone.text("part")).isEqualTo("right");
    Reply unknown =
        line.post(
            "/api/units/FE-NEVER/outside-reports",
            new Multipart().csv("average", csv("left", ",", ".", hz -> 0)).end());
    assertThat(unknown.status()).isEqualTo(404);
  }

  @Test
  void forgetsWhoPublishedItWhenAsked() {
    Reply kept =
        report(
            "",
            new Multipart()
                .json("report", KNOWN)
                .csv("left", csv("left", ",", ".", hz -> 0))
                .csv("right", csv("right", ",", ".", hz -> 0)));
    String self = kept.json().at("/links/self").asString();
    assertThat(line.delete(self + "/source").status()).isEqualTo(204);
    assertThat(line.get(self).json().path("source").isNull()).isTrue();
    assertThat(line.get("/api/ledger/check").json().path("intact").asBoolean()).isTrue();
  }

  @Test
  void printsTheAnswerAsADossierAndOneForThePublicWithoutPeople() throws IOException {
    Reply kept =
        report(
            "",
            new Multipart()
                .json("report", KNOWN)
                .csv("left", csv("left", ",", ".", hz -> hz > 6000 ? -8 : 0))
                .csv("right", csv("right", ",", ".", hz -> 0)));
    String address = kept.json().at("/links/dossier").asString();
    String full = text(address, 3, 5);
    assertThat(full)
        .contains("The question", "A reader's letter", "disagree in", "op-17", "En")
        .contains("How sure it is", "The limit and its history", "Record codes");
    String open = text(address + "&public=true", 3, 5);
    assertThat(open)
        .contains("version for the public", "disagree in")
        .doesNotContain("op-17")
        .doesNotContain("A reader's letter");
  }

  @Test
  void printsADossierOfTheRecordAloneAndRefusesAnUnknownUnit() throws IOException {
    byte[] left = TestSound.wav(TestSound.capture(811, TestSound.peak(3000, 6)));
    byte[] right = TestSound.wav(TestSound.capture(812, TestSound.peak(3000, 6)));
    assertThat(
            line.inspect(TestLine.inspection("FE-O2", "plain", "bench-outside"), left, right)
                .status())
        .isEqualTo(201);
    assertThat(text("/api/units/FE-O2/dossier", 2, 5))
        .contains("outside report is held against it here");
    assertThat(line.get("/api/units/FE-NEVER/dossier").status()).isEqualTo(404);
  }

  private String text(String address, int leastPages, int mostPages) throws IOException {
    Reply reply = line.get(address);
    assertThat(reply.status()).isEqualTo(200);
    try (PDDocument pdf = Loader.loadPDF(reply.raw().body())) {
      assertThat(pdf.getNumberOfPages()).isBetween(leastPages, mostPages);
      return new PDFTextStripper().getText(pdf);
    }
  }
}
