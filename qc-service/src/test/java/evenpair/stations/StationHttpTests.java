package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.jayway.jsonpath.JsonPath;
import evenpair.EvenpairDatabaseTest;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Samples;
import evenpair.acoustics.Sweep;
import evenpair.acoustics.SweepSignal;
import evenpair.captures.CaptureStore;
import evenpair.captures.WavWriter;
import evenpair.stations.Stations.Chain;
import evenpair.tolerance.Channel;
import java.net.http.HttpResponse;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInfo;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;

@EvenpairDatabaseTest
class StationHttpTests {
  private static int count;

  @LocalServerPort private int port;
  @Autowired private Stations stations;
  @Autowired private CaptureStore store;
  @Autowired private JdbcClient jdbc;

  private String name;

  @BeforeEach
  void makeAStation(TestInfo info) throws Exception {
    name = "station-" + ++count;
    assertThat(Multipart.send("PUT", url(""), "{\"note\":\"for a test\"}").statusCode())
        .isEqualTo(201);
  }

  @Nested
  class Making {
    @Test
    void twiceChangesTheNote() throws Exception {
      HttpResponse<String> again = Multipart.send("PUT", url(""), "{\"note\":\"moved\"}");
      assertThat(again.statusCode()).isEqualTo(200);
      assertThat(JsonPath.<String>read(again.body(), "$.note")).isEqualTo("moved");
      assertThat(stations.names()).contains(name);
    }

    @ParameterizedTest
    @CsvSource({
      "Bench-1",
      "bench%201",
      "b%C3%A4nk",
      "bench.1",
      "a23456789012345678901234567890123"
    })
    void refusesABadName(String bad) throws Exception {
      HttpResponse<String> answer =
          Multipart.send("PUT", "http://127.0.0.1:" + port + "/api/stations/" + bad, "{}");
      assertProblem(answer, 400, "invalid-field");
    }

    @Test
    void refusesAnUnknownField() throws Exception {
      assertProblem(Multipart.send("PUT", url(""), "{\"colour\":\"red\"}"), 400, "unknown-field");
    }

    @Test
    void namesTheKnownOnesWhenAskedForAnother() throws Exception {
      HttpResponse<String> answer =
          Multipart.send("GET", "http://127.0.0.1:" + port + "/api/stations/nowhere", null);
      assertProblem(answer, 404, "unknown-station");
      assertThat(JsonPath.<List<String>>read(answer.body(), "$.choices")).contains(name);
    }

    @Test
    void startsWithEverythingMissing() throws Exception {
      String json = Multipart.send("GET", url(""), null).body();
      assertThat(JsonPath.<String>read(json, "$.state")).isEqualTo("needs-calibration");
      assertThat(JsonPath.<List<String>>read(json, "$.needs[*].why"))
          .containsExactly("missing", "missing", "missing", "missing");
      assertThat(JsonPath.<Object>read(json, "$.microphones.left")).isNull();
    }
  }

  @Nested
  class CalibratingAMicrophone {
    /** 94 dB is 1.002374467 Pa r.m.s.; A = 0.1: √2·1.002374467/0.1 = 14.17571592 Pa. */
    @Test
    void givesPascalPerFullScaleAndKeepsTheTone() throws Exception {
      byte[] tone = tone(0.1);
      HttpResponse<String> answer = calibrate("left", tone);
      assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
      assertThat(JsonPath.<Double>read(answer.body(), "$.pascalPerFullScale"))
          .isCloseTo(14.17571592, within(1e-6));
      assertThat(JsonPath.<Double>read(answer.body(), "$.fullScaleLevelDb"))
          .isCloseTo(114, within(1e-6));
      assertThat(JsonPath.<String>read(answer.body(), "$.change.state")).isEqualTo("first");
      assertThat(JsonPath.<Boolean>read(answer.body(), "$.valid")).isTrue();
      assertThat(Instant.parse(JsonPath.read(answer.body(), "$.validUntil")))
          .isEqualTo(
              Instant.parse(JsonPath.read(answer.body(), "$.measuredAt")).plusSeconds(12 * 3600));
      try (var in = store.open(JsonPath.read(answer.body(), "$.tone.sha256"))) {
        assertThat(in.readAllBytes()).isEqualTo(tone);
      }
    }

    @Test
    void isSeenByJudging() throws Exception {
      String json = calibrate("right", tone(0.1)).body();
      Chain chain = stations.chainAt(name, Instant.now()).orElseThrow();
      assertThat(chain.microphones()).containsOnlyKeys(Channel.RIGHT);
      Stations.Microphone microphone = chain.microphones().get(Channel.RIGHT);
      assertThat(microphone.pascalPerFullScale())
          .isEqualTo(JsonPath.<Double>read(json, "$.pascalPerFullScale"));
      assertThat(microphone.earSimulatorSerial()).isEqualTo("ES-101");
      assertThat(
              stations.chainAt(name, microphone.at().minusSeconds(1)).orElseThrow().microphones())
          .isEmpty();
    }

    @Test
    void leavesALedgerEntry() throws Exception {
      String json = calibrate("left", tone(0.1)).body();
      Integer entries =
          jdbc.sql(
                  "select count(*) from ledger_entry where kind = 'calibration' and subject = :id::uuid")
              .param("id", JsonPath.<String>read(json, "$.id"))
              .query(Integer.class)
              .single();
      assertThat(entries).isEqualTo(1);
    }

    /** Half the amplitude for the same pressure: full scale stands for twice as much, +6.02 dB. */
    @Test
    void saysThatAGainHasMovedUntilASecondOneConfirmsIt() throws Exception {
      calibrate("left", tone(0.1));
      String moved = calibrate("left", tone(0.05)).body();
      assertThat(JsonPath.<Double>read(moved, "$.change.db"))
          .isCloseTo(20 * Math.log10(2), within(1e-5));
      assertThat(JsonPath.<String>read(moved, "$.change.state")).isEqualTo("changed");
      assertThat(JsonPath.<String>read(moved, "$.change.text")).contains("+6.0 dB");
      assertThat(JsonPath.<String>read(Multipart.send("GET", url(""), null).body(), "$.state"))
          .isEqualTo("changed");
      assertThat(JsonPath.<String>read(calibrate("left", tone(0.0501)).body(), "$.change.state"))
          .isEqualTo("steady");
      assertThat(JsonPath.<String>read(Multipart.send("GET", url(""), null).body(), "$.state"))
          .isEqualTo("needs-calibration");
    }

    @Test
    void expires() throws Exception {
      String old =
          calibration("left").replace("}", ",\"measuredAt\":\"2024-02-29T23:00:00+01:00\"}");
      String json =
          new Multipart()
              .json("calibration", old)
              .wav("tone", tone(0.1))
              .post(url("/calibrations"))
              .body();
      assertThat(JsonPath.<String>read(json, "$.validUntil")).isEqualTo("2024-03-01T10:00:00Z");
      assertThat(JsonPath.<Boolean>read(json, "$.valid")).isFalse();
      String station = Multipart.send("GET", url(""), null).body();
      assertThat(JsonPath.<List<String>>read(station, "$.needs[?(@.channel=='left')].why"))
          .containsExactly("expired");
    }

    @Test
    void refusesAToneThatIsTooWeakAndStoresNothing() throws Exception {
      HttpResponse<String> answer = calibrate("left", tone(0.0001));
      assertProblem(answer, 422, "tone-too-weak");
      assertThat(JsonPath.<String>read(answer.body(), "$.part")).isEqualTo("tone");
      assertThat(JsonPath.<Double>read(answer.body(), "$.measured")).isCloseTo(-80, within(0.01));
      assertThat(stations.chainAt(name, Instant.now()).orElseThrow().microphones()).isEmpty();
    }

    /** Digital silence has no level in dB: the number is left out, the document still is one. */
    @Test
    void refusesDigitalSilence() throws Exception {
      assertProblem(
          calibrate("left", WavWriter.float32(new Samples(new float[96_000], 48_000))),
          422,
          "tone-too-weak");
    }

    @Test
    void refusesTextNamedWav() throws Exception {
      HttpResponse<String> answer = calibrate("left", "not a recording".getBytes());
      assertProblem(answer, 422, "unreadable-capture");
      assertThat(JsonPath.<String>read(answer.body(), "$.part")).isEqualTo("tone");
    }

    @Test
    void refusesAnEmptyFile() throws Exception {
      assertProblem(calibrate("left", new byte[0]), 400, "empty-part");
    }

    @Test
    void refusesTwoChannels() throws Exception {
      Samples silence = new Samples(new float[96_000], 48_000);
      assertProblem(calibrate("left", WavWriter.float32(silence, silence)), 422, "wrong-channels");
    }

    @Test
    void refusesAMissingTone() throws Exception {
      HttpResponse<String> answer =
          new Multipart().json("calibration", calibration("left")).post(url("/calibrations"));
      assertProblem(answer, 400, "missing-part");
      assertThat(JsonPath.<String>read(answer.body(), "$.part")).isEqualTo("tone");
    }

    @Test
    void refusesAPartThatItDoesNotKnow() throws Exception {
      assertProblem(
          new Multipart()
              .json("calibration", calibration("left"))
              .wav("noise", tone(0.1))
              .post(url("/calibrations")),
          400,
          "unknown-part");
    }

    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        value = {
          "channel             | \"left\"           | \"middle\"           | invalid-field",
          "channel             | \"left\"           | null                 | invalid-field",
          "earSimulator        | \"IEC 60318-4\"    | \"IEC 60318-9\"      | unknown-ear-simulator",
          "levelDb             | 94.0               | 940                  | invalid-field",
          "levelDb             | 94.0               | \"94\"               | invalid-field",
          "frequencyHz         | 1000               | -1000                | invalid-field",
          "calibratorSerial    | \"SC-7\"           | \"'; drop table --\" | invalid-field",
          "operator            | \"op-17\"          | \" \"                | invalid-field",
        })
    void refusesAFieldThatIsNotRight(String field, String right, String wrong, String type)
        throws Exception {
      String json =
          calibration("left").replace("\"" + field + "\":" + right, "\"" + field + "\":" + wrong);
      HttpResponse<String> answer =
          new Multipart()
              .json("calibration", json)
              .wav("tone", tone(0.1))
              .post(url("/calibrations"));
      assertProblem(answer, 400, type);
      assertThat(JsonPath.<String>read(answer.body(), "$.field")).isEqualTo(field);
    }

    @Test
    void refusesATimeThatHasNotComeYet() throws Exception {
      String json = calibration("left").replace("}", ",\"measuredAt\":\"2999-01-01T00:00:00Z\"}");
      assertProblem(
          new Multipart()
              .json("calibration", json)
              .wav("tone", tone(0.1))
              .post(url("/calibrations")),
          422,
          "measured-in-the-future");
    }

    @Test
    void cannotBeChangedAfterwards() throws Exception {
      String id = JsonPath.read(calibrate("left", tone(0.1)).body(), "$.id");
      assertThatThrownBy(
              () ->
                  jdbc.sql(
                          "update microphone_calibration set pascal_per_full_scale = 1 where id = :id::uuid")
                      .param("id", id)
                      .update())
          .hasMessageContaining("microphone_calibration");
      assertThatThrownBy(
              () ->
                  jdbc.sql("delete from microphone_calibration where id = :id::uuid")
                      .param("id", id)
                      .update())
          .hasMessageContaining("microphone_calibration");
    }
  }

  @Nested
  class CalibratingTheOutput {
    /** √2 · 0.1796 V / 10^(−12/20) = 1.01117 V (by hand). */
    @Test
    void givesVoltsPerFullScale() throws Exception {
      HttpResponse<String> answer = output("179.6");
      assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
      assertThat(JsonPath.<Double>read(answer.body(), "$.voltsPerFullScale"))
          .isCloseTo(1.01117, within(1e-5));
      assertThat(
              stations
                  .chainAt(name, Instant.now())
                  .orElseThrow()
                  .output()
                  .orElseThrow()
                  .voltsPerFullScale())
          .isEqualTo(JsonPath.<Double>read(answer.body(), "$.voltsPerFullScale"));
    }

    @Test
    void refusesVoltsSentAsMillivolts() throws Exception {
      HttpResponse<String> answer = output("0.1796");
      assertProblem(answer, 422, "reading-implausible");
      assertThat(JsonPath.<String>read(answer.body(), "$.field")).isEqualTo("readingMvRms");
    }

    @Test
    void refusesAReadingThatIsMissing() throws Exception {
      assertProblem(output("null"), 400, "invalid-field");
    }

    private HttpResponse<String> output(String reading) throws Exception {
      return Multipart.send(
          "POST",
          url("/output-calibrations"),
          "{\"toneDbfs\":-12,\"frequencyHz\":1000,\"readingMvRms\":"
              + reading
              + ",\"meterSerial\":\"VM-3\",\"operator\":\"op-17\"}");
    }
  }

  @Nested
  class Correcting {
    /**
     * The station's right side records 0.5 dB too much, the reference pair's left earpiece is 0.8
     * dB louder; the microphones' calibrations differ by a factor of two, which must not show. Pure
     * gains: the response's own error is far below 0.001 dB.
     */
    @Test
    void findsTheStationsOwnDifference() throws Exception {
      calibrate("left", tone(0.1));
      calibrate("right", tone(0.05));
      HttpResponse<String> answer = study(3, 3).post(url("/corrections"));
      assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
      assertThat(JsonPath.<Integer>read(answer.body(), "$.version")).isEqualTo(1);
      List<Double> curve = JsonPath.read(answer.body(), "$.leftMinusRightDb");
      assertThat(curve)
          .hasSize(Grid.POINTS)
          .allSatisfy(db -> assertThat(db).isCloseTo(-0.5, within(0.001)));
      assertThat(JsonPath.<List<Double>>read(answer.body(), "$.uncertaintyDb"))
          .allSatisfy(db -> assertThat(db).isBetween(0.0, 0.001));
      Stations.Correction stored =
          stations.chainAt(name, Instant.now()).orElseThrow().correction().orElseThrow();
      assertThat(stored.leftMinusRight().at(136)).isCloseTo(-0.5, within(0.001));
    }

    @Test
    void countsVersionsAndKeepsEveryCapture() throws Exception {
      calibrate("left", tone(0.1));
      calibrate("right", tone(0.05));
      study(3, 4).post(url("/corrections"));
      String second = study(3, 3).post(url("/corrections")).body();
      assertThat(JsonPath.<Integer>read(second, "$.version")).isEqualTo(2);
      List<String> digests =
          jdbc.sql(
                  "select sha256 from station_correction_capture c join station_correction s"
                      + " on s.id = c.correction_id where s.station_id = (select id from station where name = :name) and s.version = 1")
              .param("name", name)
              .query(String.class)
              .list();
      assertThat(digests).hasSize(14).allSatisfy(digest -> assertThat(store.has(digest)).isTrue());
    }

    @Test
    void needsBothMicrophonesCalibrated() throws Exception {
      calibrate("left", tone(0.1));
      HttpResponse<String> answer = study(3, 3).post(url("/corrections"));
      assertProblem(answer, 409, "calibration-missing");
      assertThat(JsonPath.<String>read(answer.body(), "$.channel")).isEqualTo("right");
    }

    @Test
    void needsThreeSeatingsOfEach() throws Exception {
      calibrateBoth();
      HttpResponse<String> answer = study(3, 2).post(url("/corrections"));
      assertProblem(answer, 422, "seatings-wanted");
      assertThat(JsonPath.<String>read(answer.body(), "$.part")).isEqualTo("swappedLeft");
    }

    @Test
    void needsAsManyLeftAsRight() throws Exception {
      calibrateBoth();
      Multipart study = study(3, 3).wav("markedRight", capture(0.3, 99));
      HttpResponse<String> answer = study.post(url("/corrections"));
      assertProblem(answer, 422, "seatings-unequal");
      assertThat(JsonPath.<String>read(answer.body(), "$.part")).isEqualTo("markedLeft");
    }

    @Test
    void namesTheCaptureThatCannotBeAnalysed() throws Exception {
      calibrateBoth();
      Random random = new Random(5);
      float[] noise = new float[90_000];
      for (int n = 0; n < noise.length; n++) {
        noise[n] = (float) (0.01 * random.nextGaussian());
      }
      Multipart study =
          study(2, 3)
              .wav("markedLeft", WavWriter.float32(new Samples(noise, 48_000)))
              .wav("markedRight", capture(0.3, 98));
      HttpResponse<String> answer = study.post(url("/corrections"));
      assertProblem(answer, 422, "unusable-capture");
      assertThat(JsonPath.<String>read(answer.body(), "$.part")).isEqualTo("markedLeft[3]");
      assertThat(JsonPath.<String>read(answer.body(), "$.flaw")).isEqualTo("no-sweep");
    }

    @Test
    void refusesTheSameFileTwice() throws Exception {
      calibrateBoth();
      Multipart study =
          study(2, 3).wav("markedLeft", capture(0.3, 97)).wav("markedRight", capture(0.3, 97));
      assertProblem(study.post(url("/corrections")), 422, "same-capture-twice");
    }

    /**
     * One seating of the left side 12 dB down: a leak or a loose plug. By hand: values 0, 0, −12
     * have sd 6.9 dB, pooled 4.9.
     */
    @Test
    void refusesSeatingsThatDoNotAgree() throws Exception {
      calibrateBoth();
      Multipart study =
          study(2, 3).wav("markedLeft", capture(0.3 / 4, 96)).wav("markedRight", capture(0.3, 95));
      HttpResponse<String> answer = study.post(url("/corrections"));
      assertProblem(answer, 422, "seatings-scatter");
      assertThat(JsonPath.<String>read(answer.body(), "$.part")).isEqualTo("markedLeft[3]");
    }

    @Test
    void refusesACaptureAtAnotherSampleRateThanTheStimulusNamed() throws Exception {
      calibrateBoth();
      Multipart study =
          captures(
              new Multipart()
                  .json(
                      "correction",
                      "{\"referenceUnit\":\"REF-1\",\"operator\":\"op-17\",\"stimulus\":\"sweep-44100\"}"),
              3,
              3);
      assertProblem(study.post(url("/corrections")), 422, "sample-rates-differ");
    }

    private void calibrateBoth() throws Exception {
      calibrate("left", tone(0.1));
      calibrate("right", tone(0.05));
    }

    private Multipart study(int marked, int swapped) {
      return captures(
          new Multipart()
              .json("correction", "{\"referenceUnit\":\"REF-1\",\"operator\":\"op-17\"}"),
          marked,
          swapped);
    }

    /**
     * Gains on the bench. Left earpiece 0.8 dB louder than the right one; the right microphone is
     * twice less sensitive (its tone reads half), and records 0.5 dB more than its calibration
     * says.
     */
    private Multipart captures(Multipart study, int marked, int swapped) {
      double louder = Math.pow(10, 0.8 / 20);
      double rightSide = 0.5 * Math.pow(10, 0.5 / 20);
      for (int k = 0; k < marked; k++) {
        study
            .wav("markedLeft", capture(0.3 * louder, 10 + k))
            .wav("markedRight", capture(0.3 * rightSide, 20 + k));
      }
      for (int k = 0; k < swapped; k++) {
        study
            .wav("swappedLeft", capture(0.3, 30 + k))
            .wav("swappedRight", capture(0.3 * louder * rightSide, 40 + k));
      }
      return study;
    }

    /** The stimulus times a gain, with noise 110 dB below full scale so that no two are alike. */
    private byte[] capture(double gain, long seed) {
      Random random = new Random(seed);
      float[] signal = SweepSignal.render(Sweep.standard(48_000));
      for (int n = 0; n < signal.length; n++) {
        signal[n] = (float) (gain * signal[n] + 3e-6 * random.nextGaussian());
      }
      return WavWriter.float32(new Samples(signal, 48_000));
    }
  }

  private HttpResponse<String> calibrate(String channel, byte[] tone) throws Exception {
    return new Multipart()
        .json("calibration", calibration(channel))
        .wav("tone", tone)
        .post(url("/calibrations"));
  }

  private static String calibration(String channel) {
    return "{\"channel\":\""
        + channel
        + "\",\"earSimulator\":\"IEC 60318-4\",\"earSimulatorSerial\":\"ES-101\","
        + "\"calibratorSerial\":\"SC-7\",\"levelDb\":94.0,\"frequencyHz\":1000,\"operator\":\"op-17\"}";
  }

  private static byte[] tone(double amplitude) {
    float[] values = new float[96_000];
    for (int n = 0; n < values.length; n++) {
      values[n] = (float) (amplitude * Math.sin(2 * Math.PI * 1000.3 * n / 48_000));
    }
    return WavWriter.float32(new Samples(values, 48_000));
  }

  private String url(String path) {
    return "http://127.0.0.1:" + port + "/api/stations/" + name + path;
  }

  private static void assertProblem(HttpResponse<String> answer, int status, String type) {
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(status);
    assertThat(answer.headers().firstValue("Content-Type")).hasValue("application/problem+json");
    assertThat(JsonPath.<String>read(answer.body(), "$.type")).isEqualTo("/problems/" + type);
  }
}
