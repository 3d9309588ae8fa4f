package evenpair.demo.screens;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.acoustics.Biquad;
import evenpair.acoustics.Curve;
import evenpair.acoustics.FilterChain;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Response;
import evenpair.acoustics.ResponseAnalyser;
import evenpair.acoustics.Sweep;
import evenpair.acoustics.UnusableCapture;
import evenpair.captures.WavReader;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/**
 * The browser plays the sweep and records it again, through a real sound server, with a known
 * filter between output and microphones in the place of the earphone.
 */
@ExtendWith(SoundCondition.class)
@BrowserTest
class SoundCaptureTests {
  private static final double RATE = 48_000;

  /** A small vented driver's roll-off, an ear canal's resonance, and a dip; the other side differs. */
  private static final FilterChain LEFT =
      FilterChain.of(
          RATE,
          Biquad.highPass(25, 0.7, RATE),
          Biquad.peak(2800, 9, 1.2, RATE),
          Biquad.peak(7600, -6, 3, RATE),
          Biquad.gain(-6));

  private static final FilterChain RIGHT =
      FilterChain.of(
          RATE,
          Biquad.lowShelf(150, 4, 0.7, RATE),
          Biquad.peak(1000, -7, 1, RATE),
          Biquad.lowPass(14_000, 0.8, RATE),
          Biquad.gain(-8));

  /** −90 dBFS: a quiet sound card. */
  private static final double CARD_NOISE = Math.pow(10, -90 / 20.0);

  private static final ResponseAnalyser ANALYSER = new ResponseAnalyser(Sweep.standard(RATE));

  private static VirtualSoundDevice device;
  private static Chromium chromium;
  private static RunningService service;
  private Screen screen;

  @BeforeAll
  static void start(RunningService running) {
    service = running;
    device = VirtualSoundDevice.start(LEFT, RIGHT);
    chromium = Chromium.startWithSound(device.environment());
  }

  @AfterAll
  static void stop() {
    if (chromium != null) {
      chromium.close();
    }
    if (device != null) {
      device.close();
    }
  }

  @BeforeEach
  void open() {
    device.path().setGain(1, 1);
    device.path().setNoise(CARD_NOISE);
    device.path().loseSamples(0, Double.POSITIVE_INFINITY);
    screen = new Screen(chromium.browser(), service.address());
    screen.open("#/station").shows("main", "bench-1");
    choose(List.of(VirtualSoundDevice.MICROPHONES), false);
    confirmCaution();
  }

  @AfterEach
  void close() {
    screen.closeAndComplain();
  }

  @Test
  void recoversTheKnownResponseOfEachSide() throws UnusableCapture {
    Map<String, Object> capture = sweep("null, {}");
    assertThat(flaws(capture)).isEmpty();
    assertRecovered(capture, "left", LEFT);
    assertRecovered(capture, "right", RIGHT);
  }

  /**
   * From 30 Hz to 16 kHz within 0.1 dB of the analytic |H|² averaged over the same bands, gain
   * included: the service's own analysis keeps within 0.05 dB of a known filter (its accuracy
   * tests), the rest is left to the way through browser and sound server. A side that heard the
   * other would be wrong by decibels.
   */
  private static void assertRecovered(
      Map<String, Object> capture, String side, FilterChain truth) throws UnusableCapture {
    Response response = ANALYSER.analyse(WavReader.read(wav(capture, side)).channels().get(0));
    double[] measured = response.level().toArray();
    Curve expected = truth.curve();
    double worst = 0;
    double at = 0;
    for (int i = 0; i < Grid.POINTS; i++) {
      if (Grid.hz(i) >= 30 && Grid.label(i) <= 16_000) {
        double error = measured[i] - expected.at(i);
        if (!(Math.abs(error) <= Math.abs(worst))) {
          worst = error;
          at = Grid.hz(i);
        }
      }
    }
    assertThat(Math.abs(worst)).as("%s side, error at %.0f Hz", side, at).isLessThanOrEqualTo(0.1);
  }

  private static byte[] wav(Map<String, Object> capture, String side) {
    return Base64.getDecoder().decode((String) capture.get(side));
  }

  @SuppressWarnings("unchecked")
  private static List<Map<String, Object>> flaws(Map<String, Object> capture) {
    return (List<Map<String, Object>>) capture.get("flaws");
  }

  /** Chooses devices as the set-up page does. */
  private void choose(List<String> microphones, boolean swapped) {
    screen.evaluate(
        """
        async () => {
          const devices = await import('/js/sound/devices.js'), there = await devices.listDevices()
          const named = (list, name) => list.find(device => device.label === name)
          devices.keepChoice('bench-1', { output: named(there.outputs, '%s'), swapped: %s,
            inputs: %s.map(name => named(there.inputs, name)) })
        }"""
            .formatted(
                VirtualSoundDevice.OUTPUT,
                swapped,
                microphones.stream().map(name -> "'" + name + "'").toList()));
  }

  private void confirmCaution() {
    screen.evaluate(
        "async () => (await import('/js/sound/caution.js')).confirmCaution('bench-1', 'op-17')");
  }

  /**
   * @return the capture with its WAV files in base 64, or what was thrown as {@code problem}
   */
  @SuppressWarnings("unchecked")
  private Map<String, Object> sweep(String arguments) {
    return (Map<String, Object>)
        screen.evaluate(
            """
            async () => {
              const { openRecorder } = await import('/js/sound/recorder.js')
              const base64 = blob => new Promise(resolve => {
                const reader = new FileReader()
                reader.onload = () => resolve(reader.result.split(',')[1])
                reader.readAsDataURL(blob)
              })
              globalThis.recorder ??= await openRecorder('bench-1')
              try {
                const capture = await recorder.sweep(%s)
                return { ...capture, left: await base64(capture.left), right: await base64(capture.right) }
              } catch (failure) {
                return { problem: failure.key ?? failure.name, words: failure.words?.() ?? String(failure) }
              }
            }"""
                .formatted(arguments));
  }
}
