package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.acoustics.Grid;
import evenpair.acoustics.Samples;
import evenpair.acoustics.Sweep;
import evenpair.acoustics.SweepSignal;
import evenpair.captures.WavWriter;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.BeforeEach;

/** A station that is calibrated at both ends and corrected, so that pairs can be measured on it. */
abstract class TrustedStationTest extends StationHttpTest {
  private static int files;

  /**
   * Both sides alike, so that the correction is 0 within 0.001 dB; full scale is chosen so that the
   * stimulus gives the 180 mV of the limit set {@code sedge-2 plain}.
   */
  @BeforeEach
  void makeItTrusted() throws Exception {
    calibrate("left", tone(0.1));
    calibrate("right", tone(0.1));
    double voltsPerFullScale = Math.sqrt(2) * 0.18 / Sweep.standard(48_000).amplitude();
    double reading = 1000 * voltsPerFullScale * Math.pow(10, -12 / 20.0) / Math.sqrt(2);
    String output =
        String.format(
            Locale.ROOT,
            "{\"toneDbfs\":-12,\"frequencyHz\":1000,\"readingMvRms\":%.4f,\"meterSerial\":\"VM-3\",\"operator\":\"op-17\"}",
            reading);
    assertThat(Multipart.send("POST", url("/output-calibrations"), output).statusCode())
        .isEqualTo(201);
    Multipart study =
        new Multipart().json("correction", "{\"referenceUnit\":\"REF-1\",\"operator\":\"op-17\"}");
    int seed = 0;
    for (String part : new String[] {"markedLeft", "markedRight", "swappedLeft", "swappedRight"}) {
      for (int seating = 0; seating < 3; seating++) {
        study.wav(part, capture(0.3, ++seed));
      }
    }
    HttpResponse<String> answer = study.post(url("/corrections"));
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
  }

  /** The stimulus times a gain, with noise 110 dB below full scale so that no two are alike. */
  static byte[] capture(double gain, long seed) {
    Random random = new Random(seed);
    float[] signal = SweepSignal.render(Sweep.standard(48_000));
    for (int n = 0; n < signal.length; n++) {
      signal[n] = (float) (gain * signal[n] + 3e-6 * random.nextGaussian());
    }
    return WavWriter.float32(new Samples(signal, 48_000));
  }

  /** A finished curve as text; a comment makes each file its own. */
  static byte[] curve(DoubleUnaryOperator dbAtHz) {
    StringBuilder text = new StringBuilder("# file " + ++files + "\nfrequency_hz,level_db\n");
    for (double hz : Grid.frequencies()) {
      text.append(String.format(Locale.ROOT, "%.6f,%.5f%n", hz, dbAtHz.applyAsDouble(hz)));
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  final HttpResponse<String> certify(byte[] left, byte[] right) throws Exception {
    return new Multipart()
        .json(
            "unit",
            "{\"serial\":\"REF-1\",\"product\":\"sedge-2\",\"tuning\":\"plain\",\"operator\":\"eng-3\"}")
        .wav("left", left)
        .wav("right", right)
        .post(url("/reference-units"));
  }

  final HttpResponse<String> verify(byte[] left, byte[] right) throws Exception {
    return verify("REF-1", left, right);
  }

  final HttpResponse<String> verify(String unit, byte[] left, byte[] right) throws Exception {
    return new Multipart()
        .json(
            "verification",
            "{\"referenceUnit\":\""
                + unit
                + "\",\"product\":\"sedge-2\",\"tuning\":\"plain\",\"operator\":\"op-17\"}")
        .wav("left", left)
        .wav("right", right)
        .post(url("/verifications"));
  }

  final HttpResponse<String> clear(String reason) throws Exception {
    return Multipart.sendAs(
        "eng-3",
        "POST",
        url("/clearing"),
        "{\"engineer\":\"eng-3\",\"reason\":\"" + reason + "\"}");
  }
}
