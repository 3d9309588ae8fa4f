package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Biquad;
import evenpair.acoustics.Grid;
import evenpair.inspections.TestLine.Reply;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.JsonNode;

/** From real WAV bytes over real HTTP to verdicts and what is kept of them. */
@InspectionTest
class InspectionVerdictTests {
  private static final String STATION = "bench-v";

  @LocalServerPort private int port;
  @Autowired private JdbcClient jdbc;
  private TestLine line;

  @BeforeAll
  void station() {
    line = new TestLine(port);
    line.makeStation(STATION);
  }

  private static byte[] good(long seed) {
    return TestSound.wav(TestSound.capture(seed, TestSound.peak(3000, 6)));
  }

  @Test
  void passesAPairThatMeasuresAsGolden() {
    Reply reply = line.inspect(TestLine.inspection("FE-PASS", "plain", STATION), good(1), good(2));

    assertThat(reply.status()).as("%s", reply.json()).isEqualTo(201);
    assertThat(reply.text("verdict")).as("%s", reply.json()).isEqualTo("PASS");
    assertThat(reply.text("state")).isEqualTo("closed");
    assertThat(reply.text("next")).isEqualTo("done");
    assertThat(reply.json().path("reasons").size()).isZero();
    assertThat(reply.raw().headers().firstValue("Location"))
        .hasValue("/api/inspections/" + reply.text("id"));
    assertThat(Recorded.of(jdbc, "FE-PASS")).isEqualTo(new Recorded(1, 1, 1, 2));
  }

  @Test
  void levelsAreSoundPressureAtTheSetsDrive() {
    Reply reply = line.inspect(TestLine.inspection("FE-LEVEL", "plain", STATION), good(3), good(4));
    JsonNode curves =
        line.get("/api/inspections/" + reply.text("id") + "/curves?smoothing=none").json();

    // 1 kHz is index 136. Truth: the filter's own gain there plus the level of unity gain worked
    // out by hand. The chain's
    // rounding (0.02 dB of drive, calibrator level to 5 digits) and the bar of the analysis (0.05
    // dB) make 0.1 dB.
    double truth = FixtureProducts.EARPIECE.gainDb(1000) + FixtureProducts.LEVEL_DB;
    assertThat(curves.path("left").path("levelDb").path(136).doubleValue())
        .isCloseTo(truth, within(0.1));
    assertThat(curves.path("frequencyHz").size()).isEqualTo(241);
    assertThat(curves.path("earSimulator").path("specifiedToHz").doubleValue()).isEqualTo(10_000);
    assertThat(curves.path("windows").path("lowerDb").path(240).isNull())
        .as("20 kHz lies in no region")
        .isTrue();
  }

  @Test
  void failsAWindowAndSaysWhereInASentence() {
    byte[] right =
        TestSound.wav(TestSound.capture(6, TestSound.peak(3000, 6), TestSound.peak(9000, 5)));
    Reply reply = line.inspect(TestLine.inspection("FE-WINDOW", "plain", STATION), good(5), right);

    assertThat(reply.text("verdict")).isEqualTo("FAIL");
    JsonNode window = find(reply, "window");
    assertThat(window.path("channel").stringValue()).isEqualTo("right");
    assertThat(window.path("region").stringValue()).isEqualTo("treble");
    // A peaking filter's largest gain lies at its centre; the nearest grid point is 8912.5 Hz (n =
    // 316), R80 label 9 kHz.
    assertThat(window.path("frequencyHz").doubleValue()).isCloseTo(9000, within(200.0));
    // 5 dB at the centre; power means over a band and over 1/12 octave take a little off the top.
    assertThat(window.path("text").stringValue())
        .matches(
            "Right earpiece is 1\\.[89] dB above its treble window at 9 kHz"
                + " \\(\\+4\\.[89] dB, allowed \\+3\\.0 dB\\)\\.");
    assertThat(reply.json().path("unit").path("verdict").stringValue()).isEqualTo("FAIL");
    assertThat(reply.json().path("unit").path("failed").path(0).stringValue()).isEqualTo("plain");
  }

  @Test
  void failsReversedPolarity() {
    float[] reversed = TestSound.capture(8, TestSound.peak(3000, 6));
    for (int i = 0; i < reversed.length; i++) {
      reversed[i] = -reversed[i];
    }
    Reply reply =
        line.inspect(
            TestLine.inspection("FE-POLARITY", "plain", STATION), good(7), TestSound.wav(reversed));

    assertThat(reply.text("verdict")).isEqualTo("FAIL");
    assertThat(reply.reasonKinds()).first().isEqualTo("polarity");
  }

  @Test
  void takesATwoChannelFileWithLeftFirst() {
    float[] quieter = TestSound.capture(10, TestSound.peak(3000, 6), Biquad.gain(-3));
    byte[] both = TestSound.wav(TestSound.capture(9, TestSound.peak(3000, 6)), quieter);
    Reply reply =
        line.inspect(
            new Multipart()
                .json("inspection", TestLine.inspection("FE-BOTH", "plain", STATION))
                .wav("both", both));

    assertThat(reply.text("verdict")).as("%s", reply.json()).isEqualTo("FAIL");
    assertThat(find(reply, "level").path("channel").stringValue()).isEqualTo("right");
    String captures = "/api/inspections/" + reply.text("id") + "/captures/1/";
    assertThat(line.get(captures + "left").raw().body()).isEqualTo(both);
    assertThat(line.get(captures + "right").raw().body()).isEqualTo(both);
  }

  @Test
  void takesFinishedCurvesOfAnotherRig() {
    String csv = curve("");
    Multipart parts =
        new Multipart()
            .json("inspection", TestLine.inspection("FE-CURVES", "plain", STATION))
            .csv("left", csv)
            .csv("right", curve("0.05"));
    Reply reply = line.inspect(parts);

    assertThat(reply.text("verdict")).as("%s", reply.json()).isEqualTo("PASS");
    byte[] sent = csv.getBytes(StandardCharsets.UTF_8);
    assertThat(line.get("/api/inspections/" + reply.text("id") + "/captures/1/left").raw().body())
        .isEqualTo(sent);
  }

  private static String curve(String offset) {
    double add = offset.isEmpty() ? 0 : Double.parseDouble(offset);
    StringBuilder csv = new StringBuilder("frequency_hz,level_db,phase_deg\n");
    for (int i = 0; i < 241; i++) {
      double hz = Grid.hz(i);
      csv.append(hz)
          .append(',')
          .append(FixtureProducts.golden().level().at(i) + add)
          .append(",0\n");
    }
    return csv.toString();
  }

  @Test
  void judgesTheMeanOfTheSeatingsThatTheSetWants() {
    Reply first =
        line.inspect(TestLine.inspection("FE-TWICE", "twice", STATION), good(11), good(12));
    assertThat(first.text("state")).isEqualTo("open");
    assertThat(first.text("verdict")).isNull();
    assertThat(first.text("lastAttempt")).isNull();
    assertThat(first.text("next")).isEqualTo("another-seating");

    // +4 dB in one of two seatings is outside alone (±3 dB), but +2 dB in the mean is inside.
    byte[] left =
        TestSound.wav(TestSound.capture(13, TestSound.peak(3000, 6), TestSound.peak(9000, 4)));
    byte[] right =
        TestSound.wav(TestSound.capture(14, TestSound.peak(3000, 6), TestSound.peak(9000, 4)));
    Reply again =
        line.inspect(
            TestLine.inspection("FE-TWICE", "twice", STATION, ", \"seating\": 1"), left, right);
    assertThat(again.status()).isEqualTo(409);
    assertThat(again.json().path("expected").intValue()).isEqualTo(2);

    Reply second =
        line.inspect(
            TestLine.inspection("FE-TWICE", "twice", STATION, ", \"seating\": 2"), left, right);
    assertThat(second.text("verdict")).as("%s", second.json()).isEqualTo("PASS");
    assertThat(second.text("id")).isEqualTo(first.text("id"));
    assertThat(second.json().path("seatings").path("valid").intValue()).isEqualTo(2);
    assertThat(Recorded.of(jdbc, "FE-TWICE")).isEqualTo(new Recorded(1, 2, 1, 4));
  }

  @Test
  void judgesProductionOnceAndPointsToTheOtherOccasions() {
    String json = TestLine.inspection("FE-AGAIN", "plain", STATION);
    assertThat(line.inspect(json, good(15), good(16)).status()).isEqualTo(201);

    Reply again = line.inspect(json, good(17), good(18));
    assertThat(again.status()).isEqualTo(409);
    assertThat(again.text("type")).isEqualTo("/problems/already-judged");
    assertThat(again.text("detail")).contains("PASS", "rework, audit or return");
    assertThat(Recorded.of(jdbc, "FE-AGAIN")).isEqualTo(new Recorded(1, 1, 1, 2));

    String rework = TestLine.inspection("FE-AGAIN", "plain", STATION, ", \"occasion\": \"rework\"");
    assertThat(line.inspect(rework, good(19), good(20)).text("verdict")).isEqualTo("PASS");
    JsonNode unit = line.get("/api/units/FE-AGAIN").json();
    assertThat(unit.path("occasion").stringValue()).isEqualTo("rework");
    assertThat(unit.path("verdict").stringValue()).as("warm is missing").isEqualTo("INCOMPLETE");
    assertThat(unit.path("inspections").size()).isEqualTo(2);
  }

  @Test
  void passesAUnitWhenEveryRequiredTuningPassed() {
    line.inspect(TestLine.inspection("FE-WHOLE", "plain", STATION), good(21), good(22));
    Reply last = line.inspect(TestLine.inspection("FE-WHOLE", "warm", STATION), good(23), good(24));

    assertThat(last.json().path("unit").path("verdict").stringValue()).isEqualTo("PASS");
    JsonNode unit = line.get("/api/units/FE-WHOLE").json();
    assertThat(unit.path("verdict").stringValue()).isEqualTo("PASS");
    assertThat(unit.path("tunings").path(0).path("verdict").stringValue()).isEqualTo("PASS");
    assertThat(unit.path("tunings").path(2).path("required").booleanValue()).isFalse();
  }

  @Test
  void listsInPartsThatLinkToTheNext() {
    for (int i = 0; i < 3; i++) {
      line.inspect(
          TestLine.inspection("FE-LIST-" + i, "plain", STATION).replace("FB-1", "FB-LIST"),
          good(30 + i),
          good(40 + i));
    }
    JsonNode first = line.get("/api/inspections?batch=FB-LIST&limit=2").json();
    JsonNode second = line.get(first.path("next").stringValue()).json();

    assertThat(serials(first)).containsExactly("FE-LIST-2", "FE-LIST-1");
    assertThat(serials(second)).containsExactly("FE-LIST-0");
    assertThat(second.path("next").isNull()).isTrue();
    assertThat(first.path("items").path(0).has("attempts")).isFalse();
    assertThat(serials(line.get("/api/inspections?batch=FB-LIST&order=oldest&verdict=PASS").json()))
        .containsExactly("FE-LIST-0", "FE-LIST-1", "FE-LIST-2");
    assertThat(line.get("/api/inspections?verdict=GOOD").status()).isEqualTo(400);
    assertThat(line.get("/api/inspections?after=nowhere").status()).isEqualTo(400);
  }

  @Test
  void knowsNothingOfUnitsAndInspectionsThatDoNotExist() {
    assertThat(line.get("/api/units/FE-NEVER").status()).isEqualTo(404);
    assertThat(line.get("/api/inspections/019ab8c6-2f10-7d3e-9b1c-5a4d7c1e0f22").status())
        .isEqualTo(404);
  }

  private static List<String> serials(JsonNode page) {
    return page.path("items").valueStream().map(item -> item.path("serial").stringValue()).toList();
  }

  private static JsonNode find(Reply reply, String kind) {
    return reply
        .json()
        .path("reasons")
        .valueStream()
        .filter(reason -> reason.path("kind").stringValue().equals(kind))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no reason of kind " + kind + " in " + reply.json()));
  }
}
