package evenpair.inspections;

import evenpair.acoustics.Biquad;
import evenpair.acoustics.Curve;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.FilterChain;
import evenpair.products.Products;
import evenpair.tolerance.GoldenResponse;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Products for these tests only. {@code fern-1} (serials {@code FE-…}) has the tunings {@code
 * plain}, {@code warm} (both required), {@code twice} (two seatings wanted), {@code loud} (a drive
 * that no standard stimulus has) and {@code unset} (no limit set); {@code moss-1} is measured on
 * another simulator type, and {@code open-1} takes every serial number. {@code gorse-1} (serials
 * {@code GO-…}) has two responses, {@code plain} and {@code warm}. {@code furze-1} (serials {@code
 * FU-…}) has one tuning for each further check: {@code guarded} (a conditional pass is accepted),
 * {@code strict} (it is not), {@code quiet} (idle noise to 50 dB(A)), {@code clean} (THD to 1 %).
 */
final class FixtureProducts implements Products {
  static final String MAKER = "Saltmarsh Works";

  /** What a filter-less earpiece measures on the fixture's station: see {@link TestLine}. */
  static final double LEVEL_DB = TestLine.levelOfUnityGain();

  static final FilterChain EARPIECE = FilterChain.of(TestSound.RATE, TestSound.peak(3000, 6));

  /** The shelf of {@code gorse-1}'s second tuning: 8 dB below 300 Hz. */
  static final Biquad SHELF = Biquad.lowShelf(300, 8, 0.71, TestSound.RATE);

  private static final FilterChain WARM =
      FilterChain.of(TestSound.RATE, TestSound.peak(3000, 6), SHELF);

  private final List<StoredLimitSet> sets =
      List.of(
          set("fern-1", "plain", EarSimulator.IEC_60318_4, 1, 180),
          set("fern-1", "warm", EarSimulator.IEC_60318_4, 1, 180),
          set("fern-1", "twice", EarSimulator.IEC_60318_4, 2, 180),
          set("fern-1", "loud", EarSimulator.IEC_60318_4, 1, 900),
          set("moss-1", "plain", EarSimulator.IEC_60318_5, 1, 180),
          set("open-1", "plain", EarSimulator.IEC_60318_4, 1, 180),
          new FixtureSet("gorse-1", "plain").stored(),
          new FixtureSet("gorse-1", "warm").golden(golden(WARM)).stored(),
          new FixtureSet("furze-1", "guarded").guarded(true).stored(),
          new FixtureSet("furze-1", "strict").guarded(false).stored(),
          new FixtureSet("furze-1", "quiet").idleNoiseDba(50).stored(),
          new FixtureSet("furze-1", "clean").thdPercent(1).stored());

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
          new Product(
              "moss-1",
              "Moss 1",
              MAKER,
              "MO-.+",
              EarSimulator.IEC_60318_5,
              List.of(new Tuning("plain", true))),
          new Product(
              "open-1",
              "Open 1",
              MAKER,
              ".+",
              EarSimulator.IEC_60318_4,
              List.of(new Tuning("plain", true))),
          new Product(
              "gorse-1",
              "Gorse 1",
              MAKER,
              "GO-.+",
              EarSimulator.IEC_60318_4,
              List.of(new Tuning("plain", true), new Tuning("warm", true))),
          new Product(
              "furze-1",
              "Furze 1",
              MAKER,
              "FU-.+",
              EarSimulator.IEC_60318_4,
              List.of(
                  new Tuning("guarded", false),
                  new Tuning("strict", false),
                  new Tuning("quiet", false),
                  new Tuning("clean", false))));

  static StoredLimitSet set(
      String product, String tuning, EarSimulator simulator, int seatings, double millivolts) {
    return new FixtureSet(product, tuning)
        .on(simulator)
        .seatings(seatings)
        .millivolts(millivolts)
        .stored();
  }

  static GoldenResponse golden() {
    return golden(EARPIECE);
  }

  private static GoldenResponse golden(FilterChain earpiece) {
    return new GoldenResponse(Curve.from(hz -> earpiece.gainDb(hz) + LEVEL_DB), Optional.empty());
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
        .filter(
            s ->
                s.set().product().equals(product)
                    && s.set().tuning().equals(tuning)
                    && version == 3)
        .findFirst();
  }

  @Override
  public List<VersionFacts> limitSetHistory(String product, String tuning) {
    return limitSet(product, tuning, 3)
        .map(
            s ->
                new VersionFacts(
                    3,
                    s.digest(),
                    Instant.EPOCH,
                    Optional.of(Instant.EPOCH),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.of(Instant.EPOCH)))
        .stream()
        .toList();
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
      String product,
      String tuning,
      String name,
      GoldenResponse golden,
      UUID author,
      Provenance provenance) {
    throw new IllegalStateException("the fixture's golden responses never change");
  }
}
