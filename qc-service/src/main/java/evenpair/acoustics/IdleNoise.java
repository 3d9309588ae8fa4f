package evenpair.acoustics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The noise of a unit that plays nothing: A-weighted level and narrow tones.
 *
 * <p>Welch's method: Hann-windowed segments that overlap by half, four at least. The level is the
 * square root of the weighted power from 20 Hz up; a tone is a bin that stands 10 dB above the
 * median of its ± 1/3 octave and is the largest beside it.
 *
 * @param weightedRms A-weighted r.m.s. re full scale (1 for a constant of ±1)
 * @param tones narrow tones, by frequency
 * @param averages how many segments were averaged
 */
public record IdleNoise(double weightedRms, List<Tone> tones, int averages) {
  private static final double SEGMENT_SECONDS = 0.5;
  private static final int LEAST_AVERAGES = 4;
  private static final double LOWEST_HZ = 20;
  private static final double TONE_RATIO = 10;
  private static final double NEIGHBOURHOOD = Math.pow(10, 0.1);

  /** Bins that a Hann window spreads a tone over, to each side. */
  private static final int SPREAD = 3;

  /** What a tone's frequency points to. */
  public enum Origin {
    /** A multiple of 1 kHz, the frames of a full-speed USB connection. */
    USB_FRAME,
    /** A multiple of 8 kHz, the micro-frames of a high-speed USB connection. */
    USB_MICRO_FRAME,
    /** Neither. */
    UNNAMED
  }

  /**
   * @param hz the bin's frequency, exact to half a bin (1 Hz)
   * @param aboveDb dB above the median around it
   * @param origin what it points to (USB 2.0, clause 8.4.3, from memory)
   */
  public record Tone(double hz, double aboveDb, Origin origin) {}

  public IdleNoise {
    tones = List.copyOf(tones);
  }

  /**
   * @param recording of the idle unit, 1.25 s at least
   * @throws IllegalArgumentException if it is too short for four averages: then idle noise is not
   *     judged
   */
  public static IdleNoise of(Samples recording) {
    Spectrum spectrum = welch(recording);
    double power = 0;
    for (int k = 1; k < spectrum.power.length; k++) {
      double hz = k * spectrum.binHz;
      power += hz >= LOWEST_HZ ? spectrum.power[k] * Weighting.A.power(hz) : 0;
    }
    return new IdleNoise(Math.sqrt(power), tones(spectrum), spectrum.averages);
  }

  /** One-sided mean-square power of each bin. */
  private record Spectrum(double[] power, double binHz, int averages) {}

  private static Spectrum welch(Samples recording) {
    float[] samples = recording.values();
    int length = (int) Math.round(SEGMENT_SECONDS * recording.rateHz());
    int averages = samples.length < length ? 0 : (samples.length - length) / (length / 2) + 1;
    if (averages < LEAST_AVERAGES) {
      throw new IllegalArgumentException(
          "idle noise needs "
              + LEAST_AVERAGES
              + " averages of 0.5 s, the recording of "
              + recording.seconds()
              + " s gives "
              + averages);
    }
    Fourier fourier = new Fourier(length);
    double[] sum = new double[fourier.length() / 2 + 1];
    for (int segment = 0; segment < averages; segment++) {
      add(samples, segment * (length / 2), length, fourier, sum);
    }
    // Parseval with the Hann window's mean square of 3/8; both halves of the spectrum
    double scale = 2 / (averages * 0.375 * length * fourier.length());
    for (int k = 0; k < sum.length; k++) {
      sum[k] *= scale;
    }
    return new Spectrum(sum, recording.rateHz() / fourier.length(), averages);
  }

  private static void add(float[] samples, int start, int length, Fourier fourier, double[] sum) {
    double[] segment = new double[fourier.length()];
    for (int n = 0; n < length; n++) {
      segment[n] = (0.5 - 0.5 * Math.cos(2 * Math.PI * n / length)) * samples[start + n];
    }
    fourier.forward(segment);
    double[] power = Fourier.power(segment);
    for (int k = 0; k < sum.length; k++) {
      sum[k] += power[k];
    }
  }

  private static List<Tone> tones(Spectrum spectrum) {
    List<Tone> tones = new ArrayList<>();
    double[] power = spectrum.power;
    int first = (int) Math.ceil(LOWEST_HZ / spectrum.binHz) + SPREAD;
    for (int k = first; k < power.length - SPREAD; k++) {
      if (isPeak(power, k)) {
        double median = median(power, k);
        if (power[k] > TONE_RATIO * median && median > 0) {
          double hz = k * spectrum.binHz;
          tones.add(new Tone(hz, 10 * Math.log10(power[k] / median), origin(hz, spectrum.binHz)));
        }
      }
    }
    return tones;
  }

  private static boolean isPeak(double[] power, int k) {
    for (int d = 1; d <= SPREAD; d++) {
      if (power[k - d] >= power[k] || power[k + d] > power[k]) {
        return false;
      }
    }
    return true;
  }

  private static double median(double[] power, int k) {
    int from = (int) (k / NEIGHBOURHOOD);
    int to = (int) Math.min(power.length - 1, Math.max(k * NEIGHBOURHOOD, k + 2 * SPREAD + 1));
    double[] around =
        Arrays.copyOfRange(power, Math.max(1, Math.min(from, k - 2 * SPREAD - 1)), to + 1);
    Arrays.sort(around);
    return around[around.length / 2];
  }

  private static Origin origin(double hz, double tolerance) {
    if (hz >= 1000 - tolerance
        && Math.abs(Math.IEEEremainder(hz, 8000)) <= tolerance
        && hz > 4000) {
      return Origin.USB_MICRO_FRAME;
    }
    return hz >= 1000 - tolerance && Math.abs(Math.IEEEremainder(hz, 1000)) <= tolerance
        ? Origin.USB_FRAME
        : Origin.UNNAMED;
  }
}
