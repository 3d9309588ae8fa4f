package evenpair.inspections;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.FilterChain;
import evenpair.acoustics.Smoothing;
import evenpair.products.Products;
import evenpair.tolerance.Drive;
import evenpair.tolerance.GoldenResponse;
import evenpair.tolerance.Judges;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Region;
import evenpair.tolerance.Span;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/**
 * Products for these tests only. {@code fern-1} (serials {@code FE-…}) has the tunings {@code plain}, {@code warm} (both
 * required), {@code twice} (two seatings wanted), {@code loud} (a drive that no standard stimulus has) and {@code unset} (no
 * limit set); {@code moss-1} is measured on another simulator type, and {@code open-1} takes every serial number.
 */
final class FixtureProducts implements Products {
  static final String MAKER = "Saltmarsh Works";

  /** What a filter-less earpiece measures on the fixture's station: see {@link TestLine}. */
  static final double LEVEL_DB = TestLine.levelOfUnityGain();

  static final FilterChain EARPIECE = FilterChain.of(TestSound.RATE, TestSound.peak(3000, 6));

  private final List<StoredLimitSet> sets =
      List.of(
          set("fern-1", "plain", EarSimulator.IEC_60318_4, 1, 180),
          set("fern-1", "warm", EarSimulator.IEC_60318_4, 1, 180),
          set("fern-1", "twice", EarSimulator.IEC_60318_4, 2, 180),
          set("fern-1", "loud", EarSimulator.IEC_60318_4, 1, 900),
          set("moss-1", "plain", EarSimulator.IEC_60318_5, 1, 180),
          set("open-1", "plain", EarSimulator.IEC_60318_4, 1, 180));

  private final List<Product> products =
      List.of(
          new Product(
              "fern-1",
              "Fern 1",
              MAKER,
              "FE-[A-Z0-9-]+",
              EarSimulator.IEC_60318_4,
              List.of(
                  new Tuning("plain", true),
                  new Tuning("warm", true),
                  new Tuning("twice", false),
                  new Tuning("loud", false),
                  new Tuning("unset", false))),
          new Product("moss-1", "Moss 1", MAKER, "MO-.+", EarSimulator.IEC_60318_5, List.of(new Tuning("plain", true))),
          new Product("open-1", "Open 1", MAKER, ".+", EarSimulator.IEC_60318_4, List.of(new Tuning("plain", true))));

  static StoredLimitSet set(String product, String tuning, EarSimulator simulator, int seatings, double millivolts) {
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
            List.of(),
            true,
            OptionalDouble.empty(),
            30,
            new LimitSet.SeatingRules(seatings, 3, 3, 8, new Band(5000, 11_000)),
            0.5,
            new LimitSet.DecisionRule(false, 0, false));
    GoldenResponse golden = golden();
    String key = product + '/' + tuning + "/3";
    UUID id = UUID.nameUUIDFromBytes(key.getBytes(StandardCharsets.UTF_8));
    return new StoredLimitSet(id, set, id, golden, "0".repeat(64), Judges.forLimits(set, golden));
  }

  static GoldenResponse golden() {
    return new GoldenResponse(Curve.from(hz -> EARPIECE.gainDb(hz) + LEVEL_DB), Optional.empty());
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

  @Override
  public List<Product> all() {
    return products;
  }

  @Override
  public Optional<Product> find(String product) {
    return products.stream().filter(p -> p.key().equals(product)).findFirst();
  }

  @Override
  public Optional<StoredLimitSet> activeAt(String product, String tuning, Instant at) {
    return limitSet(product, tuning, 3);
  }

  @Override
  public Optional<StoredLimitSet> limitSet(String product, String tuning, int version) {
    return sets.stream()
        .filter(s -> s.set().product().equals(product) && s.set().tuning().equals(tuning) && version == 3)
        .findFirst();
  }

  @Override
  public StoredLimitSet limitSet(UUID id) {
    return sets.stream().filter(s -> s.id().equals(id)).findFirst().orElseThrow();
  }

  /** No tuning of the fixture is derived from another. */
  @Override
  public Optional<GoldenResponse> expectedGolden(String product, String tuning) {
    return Optional.empty();
  }

  @Override
  public UUID draftGolden(
      String product, String tuning, String name, GoldenResponse golden, UUID author, Provenance provenance) {
    throw new IllegalStateException("the fixture's golden responses never change");
  }
}
