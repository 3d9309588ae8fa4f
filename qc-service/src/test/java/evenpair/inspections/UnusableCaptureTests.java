package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.acoustics.Biquad;
import evenpair.inspections.TestLine.Reply;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * What decodes but cannot be judged: 201 INVALID with the reason, the bytes kept, the inspection
 * still open.
 */
@InspectionTest
class UnusableCaptureTests {
  private static final String STATION = "bench-u";

  @LocalServerPort private int port;
  @Autowired private JdbcClient jdbc;
  private TestLine line;

  @BeforeAll
  void station() {
    line = new TestLine(port);
    line.makeStation(STATION);
    line.makeUncalibratedStation("bench-u-bare");
  }

  private static float[] good(long seed) {
    return TestSound.capture(seed, TestSound.peak(3000, 6));
  }

  static Stream<Arguments> flaws() {
    float[] clipped = good(1);
    for (int i = 40_000; i < 40_010; i++) {
      clipped[i] = 1;
    }
    float[] gap = good(2);
    Arrays.fill(gap, 45_000, 45_400, 0);
    float[] whole = good(3);
    return Stream.of(
        Arguments.of("clipped", clipped),
        Arguments.of("drop-out", gap),
        Arguments.of("silent", new float[whole.length]),
        // The sweep begins at 350 ms and needs 250 ms before it; 0.3 s cut off leave 50 ms.
        Arguments.of(
            "begun-too-late",
            Arrays.copyOfRange(whole, (int) (0.3 * TestSound.RATE), whole.length)),
        // 300 ms stand after the sweep and 250 are needed.
        Arguments.of(
            "ended-too-early", Arrays.copyOf(whole, whole.length - (int) (0.2 * TestSound.RATE))),
        Arguments.of("no-sweep", noiseOnly(whole.length)));
  }

  private static float[] noiseOnly(int length) {
    float[] recorded = TestSound.capture(4, 0.01, Biquad.gain(-200));
    return Arrays.copyOf(recorded, length);
  }

  @ParameterizedTest
  @MethodSource("flaws")
  void keepsAFlawedCaptureAndNamesItsFlaw(String kind, float[] left) {
    String serial = "FE-" + kind.toUpperCase(Locale.ROOT);
    byte[] sent = TestSound.wav(left);
    Reply reply =
        line.inspect(TestLine.inspection(serial, "plain", STATION), sent, TestSound.wav(good(5)));

    requireInvalid(reply, serial, kind);
    assertThat(reply.json().path("reasons").path(0).path("channel").stringValue())
        .isEqualTo("left");
    assertThat(reply.reasonText()).startsWith("The left recording");
    assertThat(line.get("/api/inspections/" + reply.text("id") + "/captures/1/left").raw().body())
        .isEqualTo(sent);
    assertThat(line.get("/api/inspections/" + reply.text("id") + "/curves").status())
        .isEqualTo(409);
  }

  private void requireInvalid(Reply reply, String serial, String kind) {
    assertThat(reply.status()).as("%s", reply.json()).isEqualTo(201);
    assertThat(reply.reasonKinds()).contains(kind);
    assertThat(reply.text("lastAttempt")).isEqualTo("INVALID");
    assertThat(reply.text("verdict")).isNull();
    assertThat(reply.text("state")).isEqualTo("open");
    assertThat(reply.text("next")).isEqualTo("reseat");
    assertThat(reply.json().path("seatings").path("tries").intValue())
        .as("no mounting is blamed")
        .isZero();
    assertThat(Recorded.of(jdbc, serial).attempts()).isEqualTo(1);
    assertThat(Recorded.of(jdbc, serial).verdicts()).isZero();
  }

  @Test
  void goesOnWithTheSameInspectionOnceTheCauseIsMended() {
    String json = TestLine.inspection("FE-MENDED", "plain", STATION);
    byte[] silence = TestSound.wav(new float[good(6).length]);
    Reply first = line.inspect(json, silence, TestSound.wav(good(6)));
    Reply second = line.inspect(json, TestSound.wav(good(7)), TestSound.wav(good(8)));

    assertThat(second.text("id")).isEqualTo(first.text("id"));
    assertThat(second.text("verdict")).isEqualTo("PASS");
    assertThat(second.json().path("attempts").size()).isEqualTo(2);
    assertThat(second.json().path("attempts").path(0).path("outcome").stringValue())
        .isEqualTo("INVALID");
    assertThat(
            second
                .json()
                .path("attempts")
                .path(0)
                .path("reasons")
                .path(0)
                .path("kind")
                .stringValue())
        .isEqualTo("silent");
  }

  @Test
  void refusesToJudgeOneRecordingSentTwice() {
    byte[] same = TestSound.wav(good(9));
    requireInvalid(
        line.inspect(TestLine.inspection("FE-SAME", "plain", STATION), same, same),
        "FE-SAME",
        "identical-channels");

    Multipart both =
        new Multipart()
            .json("inspection", TestLine.inspection("FE-SAME-2", "plain", STATION))
            .wav("both", TestSound.wav(good(10), good(10)));
    requireInvalid(line.inspect(both), "FE-SAME-2", "identical-channels");
  }

  @Test
  void refusesToJudgeRecordingsOfDifferentLength() {
    float[] longer = Arrays.copyOf(good(11), good(11).length + 4800);
    Reply reply =
        line.inspect(
            TestLine.inspection("FE-LENGTH", "plain", STATION),
            TestSound.wav(longer),
            TestSound.wav(good(12)));
    requireInvalid(reply, "FE-LENGTH", "lengths-differ");
  }

  @Test
  void namesTheRegionAndChannelThatAreTooNoisy() {
    // White noise of 0.01: the sweep's energy at high frequencies is spread over few milliseconds,
    // so treble suffers first.
    float[] noisy = TestSound.capture(13, 0.01, TestSound.peak(3000, 6));
    Reply reply =
        line.inspect(
            TestLine.inspection("FE-NOISY", "plain", STATION),
            TestSound.wav(good(14)),
            TestSound.wav(noisy));

    requireInvalid(reply, "FE-NOISY", "noisy");
    assertThat(reply.reasonText())
        .startsWith("The right recording is too noisy in the ")
        .contains("needs 30.0 dB");
    assertThat(reply.json().path("reasons").path(0).path("channel").stringValue())
        .isEqualTo("right");
  }

  @Test
  void failsADeadTrebleDriverInsteadOfCallingItNoise() {
    float[] dead =
        TestSound.capture(
            15,
            1e-4,
            TestSound.peak(3000, 6),
            Biquad.lowPass(5000, 0.7, TestSound.RATE),
            Biquad.lowPass(5000, 0.7, TestSound.RATE),
            Biquad.lowPass(5000, 0.7, TestSound.RATE));
    Reply reply =
        line.inspect(
            TestLine.inspection("FE-DEAD", "plain", STATION),
            TestSound.wav(good(16)),
            TestSound.wav(dead));
    assertThat(reply.text("verdict")).as("%s", reply.json()).isEqualTo("FAIL");
  }

  @Test
  void namesEveryCalibrationThatIsMissing() {
    Reply reply =
        line.inspect(
            TestLine.inspection("FE-BARE", "plain", "bench-u-bare"),
            TestSound.wav(good(17)),
            TestSound.wav(good(18)));

    requireInvalid(reply, "FE-BARE", "calibration-missing");
    assertThat(reply.reasonKinds())
        .containsExactly(
            "calibration-missing",
            "calibration-missing",
            "output-calibration-missing",
            "correction-missing");
    assertThat(Recorded.of(jdbc, "FE-BARE").curves()).as("no level without calibration").isZero();
  }

  @Test
  void namesTheDriveThatTheStimulusDoesNotHave() {
    Reply reply =
        line.inspect(
            TestLine.inspection("FE-LOUD", "loud", STATION),
            TestSound.wav(good(19)),
            TestSound.wav(good(20)));
    requireInvalid(reply, "FE-LOUD", "wrong-drive");
    // 900 mV instead of 180 mV is 20·lg 5 = 14.0 dB more than −12 dBFS.
    assertThat(reply.reasonText()).contains("−12.0 dBFS", "+2.0 dBFS");
  }

  @Test
  void saysNoDataWhereACurveDoesNotReach() {
    StringBuilder csv = new StringBuilder();
    for (int hz = 100; hz <= 18_000; hz += 100) {
      csv.append(hz).append(";100.0;0\n");
    }
    Multipart parts =
        new Multipart()
            .json("inspection", TestLine.inspection("FE-SHORT", "plain", STATION))
            .csv("left", csv.toString())
            .csv("right", csv.toString().replace(";100.0", ";100.1"));
    Reply reply = line.inspect(parts);
    requireInvalid(reply, "FE-SHORT", "no-data");
    assertThat(reply.json().path("reasons").path(0).path("region").stringValue()).isEqualTo("bass");
  }

  @Test
  void abandonsOnlyWithAKnownReasonAndThenBeginsAnew() {
    String json = TestLine.inspection("FE-ABANDON", "plain", STATION);
    Reply open = line.inspect(json, TestSound.wav(new float[90_000]), TestSound.wav(good(21)));
    String path = "/api/inspections/" + open.text("id") + "/abandonment";

    assertThat(line.post(path, "{\"operator\": \"op-17\", \"reason\": \"because\"}").status())
        .isEqualTo(400);
    assertThat(line.post(path, "{\"operator\": \"op-17\", \"reason\": \"timed-out\"}").status())
        .isEqualTo(400);
    Reply done = line.post(path, "{\"operator\": \"op-17\", \"reason\": \"station-fault\"}");
    assertThat(done.text("state")).as("%s", done.json()).isEqualTo("abandoned");
    assertThat(done.text("abandonedBecause")).isEqualTo("station-fault");
    assertThat(line.post(path, "{\"operator\": \"op-17\", \"reason\": \"station-fault\"}").status())
        .isEqualTo(409);

    Reply anew = line.inspect(json, TestSound.wav(good(22)), TestSound.wav(good(23)));
    assertThat(anew.text("id")).isNotEqualTo(open.text("id"));
    assertThat(anew.text("verdict")).isEqualTo("PASS");
  }

  @Test
  void refusesATimeOfMeasurementThatHasNotCome() {
    String later = Instant.now().plus(1, ChronoUnit.DAYS).toString();
    String json =
        TestLine.inspection("FE-FUTURE", "plain", STATION, ", \"measuredAt\": \"" + later + "\"");
    assertThat(line.inspect(json, TestSound.wav(good(24)), TestSound.wav(good(25))).status())
        .isEqualTo(422);
    assertThat(Recorded.of(jdbc, "FE-FUTURE")).isEqualTo(Recorded.NOTHING);
  }
}
