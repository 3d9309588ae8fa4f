package evenpair.acoustics;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Known linear systems: peaks, dips, shelves, steep edges, a whole earphone. Their truth is the
 * analytic |H|² averaged over the grid's bands.
 */
public final class Chains {
  private Chains() {}

  public static FilterChain named(String name, double fs) {
    return all(fs).get(name);
  }

  public static Map<String, FilterChain> all(double fs) {
    Map<String, FilterChain> chains = new LinkedHashMap<>();
    chains.put("straight wire", FilterChain.of(fs));
    chains.put("broad peak", FilterChain.of(fs, Biquad.peak(1000, 6, 1, fs)));
    chains.put("sharp peak at 8 kHz", FilterChain.of(fs, Biquad.peak(8000, 12, 5, fs)));
    chains.put(
        "shelves",
        FilterChain.of(
            fs, Biquad.lowShelf(105, 5.5, 0.71, fs), Biquad.highShelf(4000, -4, 0.71, fs)));
    chains.put("high-pass at 30 Hz", FilterChain.of(fs, Biquad.highPass(30, 0.71, fs)));
    chains.put(
        "steep high-pass at 45 Hz",
        FilterChain.of(fs, Biquad.highPass(45, 0.54, fs), Biquad.highPass(45, 1.31, fs)));
    chains.put("narrow notch of 13 dB", FilterChain.of(fs, Biquad.peak(3000, -13, 15, fs)));
    chains.put("dip at 60 Hz", FilterChain.of(fs, Biquad.peak(60, -13, 4, fs)));
    chains.put("bass resonance", FilterChain.of(fs, Biquad.peak(25, 6, 2, fs)));
    chains.put(
        "low-pass at 12 kHz",
        FilterChain.of(fs, Biquad.lowPass(12_000, 0.7, fs), Biquad.highPass(20, 0.7, fs)));
    chains.put(
        "an earphone",
        FilterChain.of(
            fs,
            Biquad.gain(-20),
            Biquad.highPass(20, 0.7, fs),
            Biquad.peak(120, 3, 1, fs),
            Biquad.peak(2800, 8, 2, fs),
            Biquad.peak(8000, 9, 6, fs),
            Biquad.peak(5000, -13, 10, fs)));
    chains.put(
        "reversed", FilterChain.of(fs, new Biquad(-0.5, 0, 0, 0, 0), Biquad.highPass(40, 0.7, fs)));
    return chains;
  }

  /** The largest error of a measured level over a band, dB. */
  public static double worst(Curve measured, FilterChain truth, Band band) {
    double worst = 0;
    for (int i = band.firstIndex(); i <= band.lastIndex(); i++) {
      worst = Math.max(worst, Math.abs(measured.at(i) - truth.powerMeanDb(i)));
    }
    return worst;
  }
}
