package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Biquad;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.inspections.TestLine.Reply;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import tools.jackson.databind.JsonNode;

/** Mountings, distortion, idle noise and tunings, from WAV bytes over HTTP. */
@InspectionTest
class MeasurementTests {
  private static final String STATION = "bench-m";

  @LocalServerPort private int port;
  @Autowired private SwitchableStations stations;
  @Autowired private Inspections inspections;
  private TestLine line;

  @BeforeAll
  void station() {
    line = new TestLine(port);
    line.makeStation(STATION);
    stations.idleFloor(STATION, 20);
  }

  private static byte[] good(long seed, Biquad... more) {
    Biquad[] filters = new Biquad[more.length + 1];
    filters[0] = TestSound.peak(3000, 6);
    System.arraycopy(more, 0, filters, 1, more.length);
    return TestSound.wav(TestSound.capture(seed, filters));
  }

  private Reply inspect(String serial, String tuning, byte[] left, byte[] right) {
    return line.inspect(TestLine.other(serial, tuning, STATION), left, right);
  }

  @Test
  void asksToReseatALeakAndFailsAfterTheLastTryWithoutMargins() {
    Biquad leak = Biquad.highPass(60, 0.71, TestSound.RATE);
    Reply first = inspect("GO-LEAK", "plain", good(100, leak), good(101));
    assertThat(first.text("lastAttempt")).as("%s", first.json()).isEqualTo("RESEAT");
    assertThat(first.text("next")).isEqualTo("reseat");
    assertThat(first.reasonKinds()).containsExactly("leak");
    assertThat(first.reasonText()).startsWith("Left earpiece leaks").endsWith("Next: try 2 of 3.");

    Reply second = inspect("GO-LEAK", "plain", good(102, leak), good(103));
    assertThat(second.reasonText()).contains("driver or seal").endsWith("Next: try 3 of 3.");
    assertThat(second.json().path("seatings").path("tries").intValue()).isEqualTo(2);

    Reply third = inspect("GO-LEAK", "plain", good(104, leak), good(105));
    assertThat(third.text("verdict")).isEqualTo("FAIL");
    assertThat(third.reasonKinds()).containsExactly("seal");
    assertThat(third.json().path("regions").size()).isZero();
    assertThat(line.get("/api/inspections/" + third.text("id") + "/curves").status())
        .isEqualTo(409);
    assertThat(inspections.batchCurves("FB-1", "gorse-1", "plain", null).units())
        .filteredOn(unit -> unit.serial().equals("GO-LEAK"))
        .singleElement()
        .satisfies(unit -> assertThat(unit.verdict()).as("counted in yield").isEqualTo("FAIL"))
        .extracting(BatchUnit::row)
        .as("out of curve statistics")
        .isEqualTo(-1);
  }

  @Test
  void doesNotTakeOneRecordingForTwoSeatings() {
    byte[] left = good(106);
    byte[] right = good(107);
    line.inspect(TestLine.inspection("FE-M-TWICE", "twice", STATION), left, right);
    Reply again =
        line.inspect(
            TestLine.inspection("FE-M-TWICE", "twice", STATION, ", \"seating\": 2"), left, right);
    assertThat(again.text("lastAttempt")).isEqualTo("INVALID");
    assertThat(again.reasonKinds()).containsExactly("doubled-seating");
    Reply second =
        line.inspect(
            TestLine.inspection("FE-M-TWICE", "twice", STATION, ", \"seating\": 2"),
            good(108),
            good(109));
    assertThat(second.text("verdict")).isEqualTo("PASS");
    assertThat(second.json().path("seatings").path("depthTold").isBoolean()).isTrue();
    JsonNode spread = second.json().path("seatings").path("spreadDb");
    assertThat(spread.size()).as("three regions, two channels").isEqualTo(6);
    // The same earpiece twice, noise 60 dB and more below it: the seatings differ by hundredths of
    // a decibel.
    assertThat(spread.path(0).path("db").doubleValue()).isBetween(0.0, 0.1);
  }

  @Nested
  class IdleNoise {
    /**
     * 14.1757 Pa are full scale (94 dB at a peak of 0.1), so that this peak is 0.02 Pa r.m.s.: 60
     * dB re 20 µPa.
     */
    private static final double SIXTY_DB = 0.02 * 1.4142136 / 14.1757;

    /** White noise, 17 dB re 20 µPa before weighting: adds 0.02 dB to 40 dB at most. */
    private static final double QUIET = 1e-5;

    private Reply quiet(String serial, long seed, byte[] idleLeft, byte[] idleRight) {
      Multipart parts =
          new Multipart().json("inspection", TestLine.other(serial, "quiet", STATION));
      parts.wav("left", good(seed)).wav("right", good(seed + 1)).wav("idleLeft", idleLeft);
      return line.inspect(idleRight == null ? parts : parts.wav("idleRight", idleRight));
    }

    @Test
    void namesThePartThatIsMissingOrTooShort() {
      byte[] idle = TestSound.idle(1, 2, QUIET, 1000, SIXTY_DB / 10);
      Reply missing = quiet("FU-UNSENT", 130, idle, null);
      assertThat(missing.text("lastAttempt")).as("%s", missing.json()).isEqualTo("INVALID");
      assertThat(missing.reasonText()).contains("'idleRight' was not sent");

      Reply tooShort =
          quiet("FU-SHORT", 132, TestSound.idle(2, 1, QUIET, 1000, SIXTY_DB / 10), idle);
      assertThat(tooShort.text("lastAttempt")).isEqualTo("INVALID");
      assertThat(tooShort.reasonText()).contains("'idleLeft' is too short");
    }

    @Test
    void isGivenInDbaWithItsTonesAndKeptAsSent() {
      byte[] left = TestSound.idle(3, 2, QUIET, 1000, SIXTY_DB / 10);
      Reply reply = quiet("FU-QUIET", 134, left, TestSound.idle(4, 2, QUIET, 1000, SIXTY_DB));

      assertThat(reply.text("verdict")).as("%s", reply.json()).isEqualTo("FAIL");
      assertThat(reply.reasonKinds()).containsExactly("idle-noise");
      JsonNode noise = reply.json().path("idleNoise");
      // A-weighting is 0 dB at 1 kHz; the analysis' weights are exact there, the window's leakage
      // below 0.01 dB.
      assertThat(noise.path("left").path("dba").doubleValue()).isCloseTo(40, within(0.05));
      assertThat(noise.path("right").path("dba").doubleValue()).isCloseTo(60, within(0.05));
      assertThat(noise.path("right").path("floorDba").doubleValue()).isEqualTo(20);
      assertThat(
              noise
                  .path("right")
                  .path("tones")
                  .valueStream()
                  .filter(t -> t.path("usbFrame").booleanValue()))
          .extracting(tone -> tone.path("hz").doubleValue())
          .anySatisfy(hz -> assertThat(hz).isCloseTo(1000, within(1.0)));
      JsonNode row = row(reply, "idle-noise");
      assertThat(row.path("unit").stringValue()).isEqualTo("dB(A)");
      String captures = "/api/inspections/" + reply.text("id") + "/captures/1/";
      assertThat(line.get(captures + "idle-left").raw().body()).isEqualTo(left);
    }

    @Test
    void isNotAskedOfATuningWithoutALimit() {
      Reply reply = inspect("GO-NONE", "plain", good(136), good(137));
      assertThat(reply.text("verdict")).isEqualTo("PASS");
      assertThat(reply.json().has("idleNoise")).isFalse();
      assertThat(
              line.get("/api/inspections/" + reply.text("id") + "/captures/1/idle-left").status())
          .isEqualTo(404);
    }
  }

  @Test
  void measuresDistortionAndJudgesIt() {
    // x + k·x² of a sweep of peak a has a second harmonic of k·a/2 re its fundamental (RV 3): k =
    // 0.16, a = 10^(−12/20): 2.01 %.
    byte[] bent = TestSound.wav(TestSound.bent(140, 0.16, TestSound.peak(3000, 6)));
    Reply reply = inspect("FU-BENT", "clean", bent, good(141));

    assertThat(reply.text("verdict")).as("%s", reply.json()).isEqualTo("FAIL");
    assertThat(reply.reasonKinds()).containsExactly("thd");
    assertThat(row(reply, "thd").path("unit").stringValue()).isEqualTo("%");
    JsonNode left =
        line.get("/api/inspections/" + reply.text("id") + "/curves").json().path("left");
    // 200 Hz is index 80; the filters' gain differs by less than 0.01 dB between 200 and 400 Hz,
    // the analysis' bar is 0.1 dB.
    assertThat(left.path("thdPercent").path(80).doubleValue()).isCloseTo(2.01, within(0.03));
    assertThat(left.path("harmonicsDb").path("2").path(80).doubleValue())
        .isCloseTo(-33.9, within(0.15));
    assertThat(left.path("harmonicFloorsDb").path("2").path(80).doubleValue()).isLessThan(-60);
    assertThat(left.path("thdPercent").path(240).isNull())
        .as("no harmonic of 20 kHz fits")
        .isTrue();
  }

  @Nested
  class Tunings {
    private JsonNode tuning(String serial, int index) {
      return line.get("/api/units/" + serial).json().path("tunings").path(index);
    }

    @Test
    void namesTheTuningThatAWrongOneSoundsLike() {
      Reply warm = inspect("GO-WRONG", "warm", good(150), good(151));
      assertThat(warm.text("verdict")).isEqualTo("FAIL");
      assertThat(warm.reasonKinds()).first().isEqualTo("other-tuning");
      assertThat(warm.reasonText()).contains("plain");
      assertThat(tuning("GO-WRONG", 0).path("problem").stringValue()).isEqualTo("missing");
      assertThat(tuning("GO-WRONG", 1).path("problem").stringValue()).isEqualTo("wrong");
      assertThat(tuning("GO-WRONG", 1).path("soundsLike").stringValue()).isEqualTo("plain");

      inspect("GO-WRONG", "plain", good(152), good(153));
      assertThat(tuning("GO-WRONG", 0).path("problem").isNull()).isTrue();
      assertThat(tuning("GO-WRONG", 1).path("problem").stringValue())
          .as("plain came under both names")
          .isEqualTo("doubled");
    }

    @Test
    void passEachByItsOwnResponse() {
      assertThat(inspect("GO-BOTH", "plain", good(154), good(155)).text("verdict"))
          .isEqualTo("PASS");
      Reply warm =
          inspect(
              "GO-BOTH",
              "warm",
              good(156, FixtureProducts.SHELF),
              good(157, FixtureProducts.SHELF));
      assertThat(warm.text("verdict")).as("%s", warm.json()).isEqualTo("PASS");
      assertThat(warm.json().path("unit").path("verdict").stringValue()).isEqualTo("PASS");
      assertThat(tuning("GO-BOTH", 1).path("problem").isNull()).isTrue();
    }

    @Test
    void cannotBeJudgedByTheRecordingsOfAnother() {
      byte[] left = good(158);
      byte[] right = good(159);
      inspect("GO-TWICE", "plain", left, right);
      Reply again = inspect("GO-TWICE", "warm", left, right);
      assertThat(again.text("lastAttempt")).isEqualTo("INVALID");
      assertThat(again.reasonKinds()).containsExactly("doubled-tuning");
      assertThat(again.reasonText()).contains("plain");
      assertThat(tuning("GO-TWICE", 1).path("problem").stringValue()).isEqualTo("doubled");
    }
  }

  @Test
  void takesWhatTheAmplifierDoesOutOfTheResponseWhenTheDriveIsRecorded() {
    // The amplifier sags 3 dB below 300 Hz, which both microphones hear; alone that is outside the
    // bass window of 2 dB.
    Biquad sag = Biquad.lowShelf(300, -3, 0.71, TestSound.RATE);
    float[] left = TestSound.capture(160, TestSound.peak(3000, 6), sag);
    float[] right = TestSound.capture(161, TestSound.peak(3000, 6), sag);
    float[] drive = TestSound.capture(162, sag);
    Reply alone = inspect("GO-SAG", "plain", TestSound.wav(left), TestSound.wav(right));
    byte[] three = TestSound.wav(left, right, drive);
    Multipart parts =
        new Multipart().json("inspection", TestLine.other("GO-DRIVE", "plain", STATION));
    Reply driven = line.inspect(parts.wav("both", three));

    assertThat(alone.reasonKinds()).as("%s", alone.json()).contains("window");
    assertThat(driven.text("verdict")).as("%s", driven.json()).isEqualTo("PASS");
    assertThat(line.get("/api/inspections/" + driven.text("id") + "/captures/1/left").raw().body())
        .isEqualTo(three);
    JsonNode levels =
        line.get("/api/inspections/" + driven.text("id") + "/curves?smoothing=none").json();
    // 50 Hz is index 32. The drive is taken re 1 kHz, where the shelf itself still has 0.02 dB; the
    // analysis' bar is 0.05 dB.
    double truth = FixtureProducts.golden().level().at(32);
    assertThat(levels.path("left").path("levelDb").path(32).doubleValue())
        .isCloseTo(truth, within(0.15));
  }

  private static JsonNode row(Reply reply, String check) {
    List<JsonNode> rows =
        reply
            .json()
            .path("regions")
            .valueStream()
            .filter(r -> r.path("check").stringValue().equals(check))
            .toList();
    assertThat(rows).as("%s in %s", check, reply.json()).isNotEmpty();
    return rows.get(0);
  }
}
