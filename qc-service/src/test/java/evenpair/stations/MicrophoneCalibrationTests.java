package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.jayway.jsonpath.JsonPath;
import evenpair.acoustics.Samples;
import evenpair.captures.WavWriter;
import evenpair.stations.Stations.Chain;
import evenpair.tolerance.Channel;
import java.net.http.HttpResponse;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MicrophoneCalibrationTests extends StationHttpTest {
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
    assertThat(stations.chainAt(name, microphone.at().minusSeconds(1)).orElseThrow().microphones())
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
        .isEqualTo("blocked");
    assertThat(JsonPath.<String>read(calibrate("left", tone(0.0501)).body(), "$.change.state"))
        .isEqualTo("steady");
    assertThat(JsonPath.<String>read(Multipart.send("GET", url(""), null).body(), "$.state"))
        .isEqualTo("needs-calibration");
  }

  @Test
  void expires() throws Exception {
    String old = calibration("left").replace("}", ",\"measuredAt\":\"2024-02-29T23:00:00+01:00\"}");
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
        new Multipart().json("calibration", json).wav("tone", tone(0.1)).post(url("/calibrations"));
    assertProblem(answer, 400, type);
    assertThat(JsonPath.<String>read(answer.body(), "$.field")).isEqualTo(field);
  }

  @Test
  void refusesATimeThatHasNotComeYet() throws Exception {
    String json = calibration("left").replace("}", ",\"measuredAt\":\"2999-01-01T00:00:00Z\"}");
    assertProblem(
        new Multipart().json("calibration", json).wav("tone", tone(0.1)).post(url("/calibrations")),
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

  /** The same tone at 0.1 and 0.104: full scale stands for 20·lg(0.1/0.104) = −0.34 dB less. */
  @Test
  void chartsHowFullScaleMoves() throws Exception {
    calibrate("left", tone(0.1));
    calibrate("left", tone(0.104));
    String drift = Multipart.send("GET", url("/drift"), null).body();
    assertThat(JsonPath.<List<String>>read(drift, "$.items[*].what"))
        .containsExactly("microphone", "microphone", "output");
    List<Double> levels = numbers(drift, "$.items[0].points[*].levelDb");
    assertThat(levels).hasSize(2);
    assertThat(levels.get(1) - levels.get(0)).isCloseTo(-20 * Math.log10(1.04), within(1e-4));
    assertThat(JsonPath.<String>read(drift, "$.items[0].note"))
        .isEqualTo("limits need 8 calibrations; have 2");
  }
}
