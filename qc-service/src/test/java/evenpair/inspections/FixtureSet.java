package evenpair.inspections;

import evenpair.acoustics.Band;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.Smoothing;
import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.Drive;
import evenpair.tolerance.GoldenResponse;
import evenpair.tolerance.Judges;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Region;
import evenpair.tolerance.Span;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/** Makes limit sets for tests that differ in one thing or two. */
final class FixtureSet {
  private final String product;
  private final String tuning;
  private EarSimulator simulator = EarSimulator.IEC_60318_4;
  private int seatings = 1;
  private double millivolts = 180;
  private GoldenResponse golden = FixtureProducts.golden();
  private List<LimitSet.DistortionLimit> distortion = List.of();
  private OptionalDouble idleNoiseDba = OptionalDouble.empty();
  private LimitSet.DecisionRule decision = new LimitSet.DecisionRule(false, 0, false);

  FixtureSet(String product, String tuning) {
    this.product = product;
    this.tuning = tuning;
  }

  FixtureSet on(EarSimulator type) {
    simulator = type;
    return this;
  }

  FixtureSet seatings(int wanted) {
    seatings = wanted;
    return this;
  }

  FixtureSet millivolts(double drive) {
    millivolts = drive;
    return this;
  }

  FixtureSet golden(GoldenResponse response) {
    golden = response;
    return this;
  }

  FixtureSet thdPercent(double limit) {
    distortion =
        List.of(
            new LimitSet.DistortionLimit(
                new Band(100, 1000),
                Optional.of(new LimitSet.Orders(2, 3)),
                OptionalDouble.of(limit),
                OptionalDouble.empty()));
    return this;
  }

  FixtureSet idleNoiseDba(double limit) {
    idleNoiseDba = OptionalDouble.of(limit);
    return this;
  }

  FixtureSet guarded(boolean acceptConditionalPass) {
    decision = new LimitSet.DecisionRule(true, 1, acceptConditionalPass);
    return this;
  }

  StoredLimitSet stored() {
    LimitSet set =
        new LimitSet(
            product,
            tuning,
            3,
            simulator,
            tuning + "-golden.csv",
            new Drive.Voltage(millivolts),
            Smoothing.TWELFTH_OCTAVE,
            new LimitSet.LevelLimit(new Band(300, 3000), -1.5, 1.5, 1.0),
            List.of(
                region("bass", 20, 200, 2.0, 1.5),
                region("mid", 200, 6000, 1.5, 1.0),
                region("treble", 6000, 16_000, 3.0, 2.5)),
            distortion,
            true,
            idleNoiseDba,
            30,
            new LimitSet.SeatingRules(seatings, 3, 3, 8, new Band(5000, 11_000)),
            0.5,
            decision);
    String key = product + '/' + tuning + "/3";
    UUID id = UUID.nameUUIDFromBytes(key.getBytes(StandardCharsets.UTF_8));
    return new StoredLimitSet(id, set, id, golden, "0".repeat(64), Judges.forLimits(set, golden));
  }

  private static Region region(String name, double from, double to, double window, double match) {
    return new Region(
        name,
        new Band(from, to),
        Span.constant(-window),
        Span.constant(window),
        Optional.of(Span.constant(match)),
        true);
  }
}
