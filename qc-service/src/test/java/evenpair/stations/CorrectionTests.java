package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.jayway.jsonpath.JsonPath;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Samples;
import evenpair.acoustics.Sweep;
import evenpair.acoustics.SweepSignal;
import evenpair.captures.WavWriter;
import java.net.http.HttpResponse;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;

class CorrectionTests extends StationHttpTest {
  /**
   * The station's right side records 0.5 dB too much, the reference pair's left earpiece is 0.8 dB
   * louder; the microphones' calibrations differ by a factor of two, which must not show. Pure
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

  /** Four studies sent at once: each becomes a version of its own, none is lost. */
  @Test
  void numbersStudiesThatArriveAtOnceOneByOne() throws Exception {
    calibrateBoth();
    ExecutorService clients = Executors.newFixedThreadPool(4);
    try {
      List<Callable<HttpResponse<String>>> studies =
          Collections.nCopies(4, () -> study(3, 3).post(url("/corrections")));
      List<Integer> versions = new ArrayList<>();
      for (Future<HttpResponse<String>> answer : clients.invokeAll(studies)) {
        assertThat(answer.get().statusCode()).as(answer.get().body()).isEqualTo(201);
        versions.add(JsonPath.read(answer.get().body(), "$.version"));
      }
      assertThat(versions).containsExactlyInAnyOrder(1, 2, 3, 4);
    } finally {
      clients.shutdown();
    }
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
   * One seating of the left side 12 dB down: a leak or a loose plug. By hand: values 0, 0, −12 have
   * sd 6.9 dB, pooled 4.9.
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
        new Multipart().json("correction", "{\"referenceUnit\":\"REF-1\",\"operator\":\"op-17\"}"),
        marked,
        swapped);
  }

  /**
   * Gains on the bench. Left earpiece 0.8 dB louder than the right one; the right microphone is
   * twice less sensitive (its tone reads half), and records 0.5 dB more than its calibration says.
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
