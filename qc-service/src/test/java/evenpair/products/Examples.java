package evenpair.products;

import evenpair.acoustics.Curve;
import evenpair.tolerance.GoldenResponse;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/** Files of limits for the tests. */
final class Examples {
  /** Every key that a set may have. */
  static final String LIMIT_SET =
      """
      # limits of the plain plug
      product: sedge-2
      tuning: plain
      version: 3
      ear-simulator: IEC 60318-4
      golden: plain-golden.csv
      drive: {mv-rms: 180}
      smoothing: 1/12 octave
      level: {band-hz: [300, 3000], tolerance-db: [-1.5, 1.5], balance-db: 1.0}
      regions:
        - {name: bass,   hz: [20, 200],     window-db: [-2.0, 2.0], match-db: 1.5}
        - {name: mid,    hz: [200, 6000],   window-db: [-1.5, 1.5], match-db: 1.0}
        - {name: treble, hz: [6000, 16000], window-db: [[-3.0, 3.0], [-6.0, 6.0]], match-db: [2.5, 4.0], required: false}
      distortion:
        - {hz: [100, 3000], orders: [2, 5], thd-percent: 1.0}
        - {hz: [100, 700], high-order-db: -50}
      polarity: same
      idle-noise-dba: 20
      signal-to-noise-db: 30
      seating: {count: 1, tries: 3, leak-db: 3, depth-percent: 8, depth-search-hz: [5000, 11000]}
      verification-db: 0.5
      decision: {rule: guarded, guard: 1.0, conditional-pass: accept}
      """;

  static final String PRODUCT =
      """
      product: sedge-2
      name: Sedge 2
      maker: Saltmarsh Works
      serial-pattern: 'SG2-\\d{6}'
      ear-simulator: IEC 60318-4
      tunings:
        - {name: plain, required: true}
        - name: warm
          required: true
          from: plain
          filters:
            - {kind: low-shelf, hz: 105, gain-db: 4, q: 0.71}
            - {kind: peak, hz: 8000, gain-db: -3, q: 2}
          gain-db: -2
          sample-rate-hz: 48000
      """;

  private Examples() {}

  /**
   * The limit set without what needs more than a pair's curves: no distortion, no idle noise, no
   * guard band.
   */
  static String judgeable(String tuning, int version) {
    return LIMIT_SET
        .replace("tuning: plain", "tuning: " + tuning)
        .replace("version: 3", "version: " + version)
        .replaceAll("(?m)^distortion:\\n(  - .*\\n)+", "")
        .replaceAll("(?m)^idle-noise-dba.*\\n", "")
        .replaceAll("(?m)^decision.*\\n", "decision: {rule: simple}\n");
  }

  /** A golden response in canonical CSV. */
  static String golden(DoubleUnaryOperator dbAtHz) {
    return GoldenCsv.write(new GoldenResponse(Curve.from(dbAtHz), Optional.empty()));
  }

  static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
