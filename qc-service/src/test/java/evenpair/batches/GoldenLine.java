package evenpair.batches;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Smoothing;
import evenpair.inspections.MeasuredCurves;
import evenpair.products.GoldenResponses;
import evenpair.products.Products;
import evenpair.tolerance.Drive;
import evenpair.tolerance.GoldenResponse;
import evenpair.tolerance.Judges;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.MeasuredChannel;
import evenpair.tolerance.MeasuredPair;
import evenpair.tolerance.Region;
import evenpair.tolerance.Span;
import evenpair.web.Refusal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.UUID;

/**
 * An invented line that makes {@code sedge-2} in {@code plain} and, derived from it, {@code warm}
 * (expected 2 dB above plain below 200 Hz). Its golden response is 100 dB everywhere; every
 * earpiece is golden + its own level (sd 0.3 dB) + its own slope (sd 0.3 dB from end to end) + 0.05
 * dB of noise at each point, from a fixed seed, so that its curves go together over frequency as
 * real ones do.
 */
final class GoldenLine implements MeasuredCurves, Products, GoldenResponses {
  static final String BATCH = "SW-2647";
  private static final Instant START = Instant.parse("2026-11-25T07:00:00Z");

  private final Random random = new Random(20261125);
  private final List<MeasuredUnit> units = new ArrayList<>();
  private final List<StoredGolden> versions = new ArrayList<>();
  private final List<StoredLimitSet> sets = new ArrayList<>();
  Provenance provenance;

  GoldenLine() {
    for (String tuning : List.of("plain", "warm")) {
      versions.add(golden(tuning, 1, Curve.from(hz -> 100), true));
      sets.add(set(tuning, 3, new Drive.Voltage(180)));
      sets.add(set(tuning, 4, new Drive.Voltage(90)));
    }
  }

  GoldenLine passed(int count) {
    for (int i = 0; i < count; i++) {
      unit("SG2-%06d".formatted(units.size() + 1), "PASS", channel(none()), channel(none()));
    }
    return this;
  }

  /** One more unit whose right earpiece has this added to it, dB. */
  GoldenLine odd(String serial, Curve right) {
    return unit(serial, "PASS", channel(none()), channel(right));
  }

  GoldenLine unit(String serial, String verdict, MeasuredChannel left, MeasuredChannel right) {
    return unit(serial, verdict, "plain", 3, left, right);
  }

  GoldenLine unit(
      String serial,
      String verdict,
      String tuning,
      int version,
      MeasuredChannel left,
      MeasuredChannel right) {
    int n = units.size();
    units.add(
        new MeasuredUnit(
            new UUID(1, n),
            serial,
            BATCH,
            "sedge-2",
            tuning,
            "bench-1",
            verdict == null ? "open" : "closed",
            verdict,
            limitSet("sedge-2", tuning, version).orElseThrow().id(),
            START.plusSeconds(n),
            new MeasuredPair(left, right)));
    return this;
  }

  UUID inspection(int place) {
    return units.get(place).inspection();
  }

  MeasuredUnit unitAt(int place) {
    return units.get(place);
  }

  static Curve none() {
    return Curve.from(hz -> 0);
  }

  MeasuredChannel channel(Curve added) {
    double level = 0.3 * random.nextGaussian();
    double slope = 0.3 * random.nextGaussian();
    double[] db = new double[Grid.POINTS];
    for (int i = 0; i < db.length; i++) {
      double place = i / (double) (Grid.POINTS - 1) - 0.5;
      double noise = 0.05 * random.nextGaussian();
      db[i] = (float) (100 + level + slope * place + noise + added.at(i));
    }
    return new MeasuredChannel(Curve.of(db), Optional.of(phase(30)));
  }

  static MeasuredChannel flat(double db, Double phaseDeg) {
    return new MeasuredChannel(
        Curve.from(hz -> db), Optional.ofNullable(phaseDeg).map(GoldenLine::phase));
  }

  static double[] phase(double deg) {
    double[] phase = new double[Grid.POINTS];
    Arrays.fill(phase, deg);
    return phase;
  }

  private static StoredGolden golden(String tuning, int version, Curve level, boolean approved) {
    UUID id = UUID.nameUUIDFromBytes((tuning + version).getBytes(StandardCharsets.UTF_8));
    GoldenResponse response = new GoldenResponse(level, Optional.empty());
    String name = tuning + "-golden.csv";
    return new StoredGolden(id, "sedge-2", tuning, version, name, response, approved);
  }

  static LimitSet limits(String tuning, int version, Drive drive, LimitSet.DecisionRule decision) {
    return new LimitSet(
        "sedge-2",
        tuning,
        version,
        EarSimulator.IEC_60318_4,
        tuning + "-golden.csv",
        drive,
        Smoothing.TWELFTH_OCTAVE,
        new LimitSet.LevelLimit(new Band(300, 3000), -1.5, 1.5, 1.0),
        List.of(region("bass", 20, 200), region("treble", 6000, 16_000)),
        List.of(),
        true,
        OptionalDouble.empty(),
        30,
        new LimitSet.SeatingRules(1, 3, 3, 8, new Band(5000, 11_000)),
        0.5,
        decision);
  }

  private StoredLimitSet set(String tuning, int version, Drive drive) {
    LimitSet set = limits(tuning, version, drive, new LimitSet.DecisionRule(false, 0, false));
    StoredGolden golden = version("sedge-2", tuning, 1);
    UUID id = UUID.nameUUIDFromBytes((tuning + "/" + version).getBytes(StandardCharsets.UTF_8));
    return new StoredLimitSet(
        id,
        set,
        golden.id(),
        golden.response(),
        "0".repeat(64),
        Judges.forLimits(set, golden.response()));
  }

  private static Region region(String name, double from, double to) {
    return new Region(
        name,
        new Band(from, to),
        Span.constant(-2),
        Span.constant(2),
        Optional.of(Span.constant(1.5)),
        true);
  }

  @Override
  public List<MeasuredUnit> of(Collection<UUID> inspections) {
    return units.stream().filter(unit -> inspections.contains(unit.inspection())).toList();
  }

  @Override
  public List<MeasuredUnit> ofBatch(String batch, String product, String tuning) {
    return units.stream()
        .filter(unit -> unit.batch().equals(batch) && unit.product().equals(product))
        .filter(unit -> unit.tuning().equals(tuning) && unit.state().equals("closed"))
        .toList();
  }

  @Override
  public List<StoredGolden> of(String product, String tuning) {
    if (!product.equals("sedge-2") || !List.of("plain", "warm").contains(tuning)) {
      throw new Refusal(404, "unknown-tuning", product + " has no tuning \"" + tuning + "\".");
    }
    return versions.stream().filter(golden -> golden.tuning().equals(tuning)).toList();
  }

  @Override
  public StoredGolden version(String product, String tuning, int version) {
    return of(product, tuning).stream()
        .filter(golden -> golden.version() == version)
        .findFirst()
        .orElseThrow(() -> new Refusal(404, "unknown-version", "no version " + version));
  }

  @Override
  public UUID draftGolden(
      String product,
      String tuning,
      String name,
      GoldenResponse golden,
      UUID author,
      Provenance from) {
    provenance = from;
    StoredGolden draft = golden(tuning, of(product, tuning).size() + 1, golden.level(), false);
    versions.add(draft);
    return draft.id();
  }

  @Override
  public Optional<GoldenResponse> expectedGolden(String product, String tuning) {
    return tuning.equals("warm")
        ? Optional.of(new GoldenResponse(Curve.from(hz -> hz < 201 ? 102 : 100), Optional.empty()))
        : Optional.empty();
  }

  @Override
  public List<Product> all() {
    return List.of(
        new Product(
            "sedge-2",
            "Sedge 2",
            "Saltmarsh Works",
            ".+",
            EarSimulator.IEC_60318_4,
            List.of(
                new Tuning("plain", true),
                new Tuning("warm", true, Optional.of("plain"), Optional.empty()))));
  }

  @Override
  public Optional<Product> find(String product) {
    return all().stream().filter(known -> known.key().equals(product)).findFirst();
  }

  @Override
  public Optional<StoredLimitSet> activeAt(String product, String tuning, Instant at) {
    return limitSet(product, tuning, 3);
  }

  @Override
  public List<VersionFacts> limitSetHistory(String product, String tuning) {
    return List.of();
  }

  @Override
  public Optional<StoredLimitSet> limitSet(String product, String tuning, int version) {
    return sets.stream()
        .filter(stored -> stored.set().tuning().equals(tuning))
        .filter(stored -> stored.set().version() == version)
        .findFirst();
  }

  @Override
  public StoredLimitSet limitSet(UUID id) {
    return sets.stream().filter(stored -> stored.id().equals(id)).findFirst().orElseThrow();
  }
}
