package evenpair.products;

import evenpair.acoustics.Band;
import evenpair.tolerance.Drive;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.LimitSet.DecisionRule;
import evenpair.tolerance.LimitSet.LevelLimit;
import evenpair.tolerance.LimitSet.SeatingRules;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/** Reads a limit set from YAML (or JSON), noting every problem with its place before refusing. */
final class LimitSetReader {
  /**
   * Keys that may be left out have these values (computation: defaults; verification is common
   * practice, no source).
   */
  private static final double SIGNAL_TO_NOISE_DB = 30;

  private static final double VERIFICATION_DB = 0.5;
  private static final SeatingRules SEATING = new SeatingRules(1, 3, 3, 8, new Band(5000, 11_000));
  private static final int HIGHEST_VERSION = 1_000_000;
  static final Pattern GOLDEN = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,59}\\.csv");

  private final Problems problems;

  private LimitSetReader(Problems problems) {
    this.problems = problems;
  }

  /** As {@link #read(String, byte[], Surroundings)}, for a set that was already found to fit. */
  static LimitSet read(String file, byte[] bytes) throws UnreadableLimits {
    return read(file, bytes, null);
  }

  /**
   * @param file name for the problems
   * @param surroundings what it must fit to
   * @throws UnreadableLimits with every problem found
   */
  static LimitSet read(String file, byte[] bytes, Surroundings surroundings)
      throws UnreadableLimits {
    Problems problems = new Problems(file);
    Optional<YamlMap> root = YamlText.parse(bytes, problems).map();
    problems.throwIfAny();
    if (surroundings != null) {
      surroundings.check(root.orElseThrow());
    }
    Optional<LimitSet> set = new LimitSetReader(problems).set(root.orElseThrow());
    problems.throwIfAny();
    return set.orElseThrow();
  }

  private Optional<LimitSet> set(YamlMap map) {
    var product = map.required("product").flatMap(Keys::key);
    var tuning = map.required("tuning").flatMap(Keys::key);
    var version = map.required("version").flatMap(v -> v.whole(1, HIGHEST_VERSION));
    var simulator = map.required("ear-simulator").flatMap(v -> v.oneOf(Keys.EAR_SIMULATORS));
    var golden =
        map.required("golden").flatMap(v -> v.text(GOLDEN, "a file name such as plain-golden.csv"));
    var drive = map.required("drive").flatMap(YamlValue::map).flatMap(this::drive);
    var smoothing = map.required("smoothing").flatMap(v -> v.oneOf(Keys.SMOOTHINGS));
    var level = map.required("level").flatMap(YamlValue::map).flatMap(this::level);
    var regions = map.required("regions").flatMap(RegionReader::read);
    var distortion = map.optional("distortion").map(DistortionReader::read).orElse(List.of());
    var polarity =
        map.optional("polarity").flatMap(PolarityReader::read).orElse(LimitSet.PolarityRule.NONE);
    OptionalDouble idleNoise =
        number(map.optional("idle-noise-dba").flatMap(v -> v.number(Range.from(0, 80))));
    double noise =
        map.optional("signal-to-noise-db")
            .flatMap(v -> v.number(Range.from(6, 100)))
            .orElse(SIGNAL_TO_NOISE_DB);
    var seating =
        map.optional("seating")
            .map(v -> v.map().flatMap(this::seating))
            .orElse(Optional.of(SEATING));
    double verification =
        map.optional("verification-db")
            .flatMap(v -> v.number(Range.above(0, 10)))
            .orElse(VERIFICATION_DB);
    var decision =
        map.optional("decision").map(v -> v.map().flatMap(this::decision)).orElse(simple());
    map.done();
    level.ifPresent(
        limit -> regions.ifPresent(list -> RegionReader.requireCover(map, limit.band(), list)));
    if (!problems.none()) {
      return Optional.empty();
    }
    return Optional.of(
        new LimitSet(
            product.orElseThrow(),
            tuning.orElseThrow(),
            version.orElseThrow(),
            simulator.orElseThrow(),
            golden.orElseThrow(),
            drive.orElseThrow(),
            smoothing.orElseThrow(),
            level.orElseThrow(),
            regions.orElseThrow(),
            distortion,
            polarity,
            idleNoise,
            noise,
            seating.orElseThrow(),
            verification,
            decision.orElseThrow()));
  }

  private Optional<Drive> drive(YamlMap map) {
    var voltage =
        map.optional("mv-rms").map(v -> v.number(Range.above(0, 10_000)).map(Drive.Voltage::new));
    var digital =
        map.optional("dbfs").map(v -> v.number(Range.from(-60, 0)).map(Drive.Digital::new));
    map.done();
    if (voltage.isPresent() == digital.isPresent()) {
      map.refuse(
          voltage.isPresent() ? "both mv-rms and dbfs" : "neither", "one of mv-rms and dbfs");
      return Optional.empty();
    }
    return voltage.isPresent()
        ? voltage.get().map(Drive.class::cast)
        : digital.get().map(Drive.class::cast);
  }

  private Optional<LevelLimit> level(YamlMap map) {
    var band = map.required("band-hz").flatMap(Keys::band);
    var tolerance = map.required("tolerance-db").flatMap(Keys::window);
    var balance = map.required("balance-db").flatMap(v -> v.number(Keys.DB_ABOVE_0));
    map.done();
    if (band.isEmpty() || tolerance.isEmpty() || balance.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new LevelLimit(band.get(), tolerance.get().start(), tolerance.get().end(), balance.get()));
  }

  private Optional<SeatingRules> seating(YamlMap map) {
    int count = map.optional("count").flatMap(v -> v.whole(1, 10)).orElse(SEATING.count());
    int tries =
        map.optional("tries").flatMap(v -> v.whole(1, 20)).orElse(Math.max(SEATING.tries(), count));
    double leak =
        map.optional("leak-db").flatMap(v -> v.number(Keys.DB_ABOVE_0)).orElse(SEATING.leakDb());
    double depth =
        map.optional("depth-percent")
            .flatMap(v -> v.number(Range.above(0, 50)))
            .orElse(SEATING.depthPercent());
    Band search = map.optional("depth-search-hz").flatMap(Keys::band).orElse(SEATING.depthSearch());
    map.done();
    if (tries < count) {
      map.refuse(
          "tries",
          tries + " tries for " + count + " seatings",
          "at least as many tries as seatings");
    }
    return Optional.of(new SeatingRules(count, tries, leak, depth, search));
  }

  private Optional<DecisionRule> decision(YamlMap map) {
    Optional<Boolean> guarded =
        map.required("rule").flatMap(v -> v.oneOf(Map.of("simple", false, "guarded", true)));
    if (guarded.isEmpty()) {
      return Optional.empty();
    }
    if (!guarded.get()) {
      map.done();
      return simple();
    }
    var guard = map.required("guard").flatMap(v -> v.number(Range.above(0, 3)));
    var accept =
        map.required("conditional-pass")
            .flatMap(v -> v.oneOf(Map.of("accept", true, "refuse", false)));
    map.done();
    return guard.flatMap(g -> accept.map(a -> new DecisionRule(true, g, a)));
  }

  private static Optional<DecisionRule> simple() {
    return Optional.of(new DecisionRule(false, 0, false));
  }

  private static OptionalDouble number(Optional<Double> number) {
    return number.map(OptionalDouble::of).orElse(OptionalDouble.empty());
  }
}
