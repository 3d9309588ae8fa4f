package evenpair.tolerance;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What one limit set asks of two earpieces that were not measured as a pair: each by itself must
 * keep its level and windows, and together they must keep match limits and balance. Immutable, may
 * be shared between threads.
 */
public final class PairFit {
  private static final Set<ReasonKind> OWN = EnumSet.of(ReasonKind.LEVEL, ReasonKind.WINDOW);

  private final LimitSet set;
  private final Curve golden;
  private final Judge judge;
  private final double[] matchDb;
  private final boolean[] required;

  private PairFit(LimitSet set, GoldenResponse golden) {
    this.set = set;
    this.golden = set.smoothing().apply(golden.level());
    this.judge = Judges.forLimits(set, golden);
    this.matchDb = LimitCurves.of(set).matchDb();
    this.required = required(set);
  }

  public static PairFit of(LimitSet set, GoldenResponse golden) {
    return new PairFit(set, golden);
  }

  private static boolean[] required(LimitSet set) {
    boolean[] required = new boolean[Grid.POINTS];
    for (Region region : set.regions()) {
      if (region.required() && region.match().isPresent()) {
        Arrays.fill(required, region.band().firstIndex(), region.band().lastIndex() + 1, true);
      }
    }
    return required;
  }

  /**
   * @return true: limits count less their guard bands
   */
  public boolean guarded() {
    return set.decision().guarded();
  }

  /**
   * Looks at both earpieces of a measured pair, each by itself, with the code that judges pairs.
   *
   * @param uncertainty of the measurement; a guarded set needs it
   */
  public Map<Channel, Earpiece> look(MeasuredPair pair, Optional<Uncertainty> uncertainty) {
    JudgedPair seen =
        new JudgedPair(
            pair,
            new Guard(set.decision(), uncertainty),
            golden,
            set.smoothing(),
            set.level().band());
    List<RegionResult> results = judge.judge(pair, uncertainty).results();
    Map<Channel, Earpiece> earpieces = new EnumMap<>(Channel.class);
    for (Channel channel : Channel.values()) {
      double[] level = set.smoothing().apply(pair.of(channel).level()).toArray();
      double alignment = seen.alignment(channel).orElse(Double.NaN);
      Optional<RegionResult> fault =
          results.stream()
              .filter(result -> result.channel() == channel && OWN.contains(result.check()))
              .filter(result -> fails(result, seen.guard()))
              .findFirst();
      earpieces.put(channel, new Earpiece(level, alignment, fault));
    }
    return earpieces;
  }

  private boolean fails(RegionResult result, Guard guard) {
    return result.judged() ? guard.rejects(result.state()) : needed(result);
  }

  private boolean needed(RegionResult result) {
    return result.check() == ReasonKind.LEVEL
        || set.regions().stream()
            .anyMatch(region -> region.name().equals(result.region()) && region.required());
  }

  /**
   * The limits of a difference: match(f) and the balance limit, each less its guard band if the set
   * is guarded. Less the guard band even where the set accepts conditional passes, because a
   * proposed pair is measured again, and one that lies at its limit fails every other time.
   *
   * @param uncertainty of the left/right difference, see {@link #together}
   * @throws IllegalArgumentException if the set is guarded and there is none
   */
  public Limits limits(Optional<Uncertainty> uncertainty) {
    if (guarded() && uncertainty.isEmpty()) {
      throw new IllegalArgumentException("a guarded set needs the uncertainty of a difference");
    }
    Guard guard = new Guard(set.decision(), uncertainty);
    List<Integer> must = new ArrayList<>();
    List<Integer> may = new ArrayList<>();
    double[] limits = new double[Grid.POINTS];
    for (int i = 0; i < Grid.POINTS; i++) {
      limits[i] = matchDb[i] - guard.match(i);
      if (!Double.isNaN(matchDb[i])) {
        (required[i] ? must : may).add(i);
      }
    }
    return new Limits(limits, ints(must), ints(may), set.level().balanceDb() - guard.balance());
  }

  /**
   * @return golden response and limits as pairs are drawn against; arrays of the caller's own
   */
  public Lines lines() {
    LimitCurves limits = LimitCurves.of(set);
    double[] level = golden.toArray();
    double[] lower = new double[Grid.POINTS];
    double[] upper = new double[Grid.POINTS];
    for (int i = 0; i < Grid.POINTS; i++) {
      lower[i] = level[i] + limits.lowerDb()[i];
      upper[i] = level[i] + limits.upperDb()[i];
    }
    return new Lines(
        Grid.frequencies(),
        set.smoothing().label(),
        level,
        lower,
        upper,
        limits.matchDb(),
        set.regions().stream()
            .map(r -> new Lines.Span(r.name(), r.band().fromHz(), r.band().toHz()))
            .toList(),
        set.earSimulator().label(),
        set.earSimulator().specifiedRange().fromHz(),
        set.earSimulator().specifiedRange().toHz());
  }

  /**
   * @return true: levels measured under the other set may be compared with those under this one
   */
  public boolean measuredAlike(LimitSet other) {
    return set.drive().equals(other.drive()) && set.earSimulator() == other.earSimulator();
  }

  private static int[] ints(List<Integer> numbers) {
    return numbers.stream().mapToInt(Integer::intValue).toArray();
  }

  /**
   * The uncertainty of the difference of two earpieces that were measured at different times.
   *
   * <ul>
   *   <li>On one station it is that of a pair's difference; where two studies differ, the larger.
   *   <li>On two stations nothing cancels: u² = u(d_L)² + u(a_L)² + u(d_R)² + u(a_R)² for the
   *       difference at a grid point, and u(a_L)² + u(a_R)² for the balance.
   * </ul>
   */
  public static Uncertainty together(Uncertainty left, Uncertainty right, boolean sameStation) {
    double[] match = new double[Grid.POINTS];
    for (int i = 0; i < match.length; i++) {
      match[i] =
          sameStation
              ? Math.max(value(left.matchDb(), i), value(right.matchDb(), i))
              : root(
                  value(left.levelDb(), i), left.offsetDb(),
                  value(right.levelDb(), i), right.offsetDb());
    }
    double balance =
        sameStation
            ? Math.max(left.balanceDb(), right.balanceDb())
            : root(left.offsetDb(), right.offsetDb());
    return new Uncertainty(
        left.levelDb(), Curve.of(match), Math.max(left.offsetDb(), right.offsetDb()), balance);
  }

  private static double value(Curve curve, int index) {
    return curve.has(index) ? curve.at(index) : Double.NaN;
  }

  private static double root(double... values) {
    return Math.sqrt(Arrays.stream(values).map(value -> value * value).sum());
  }

  /**
   * @param levelDb smoothed as judged, dB SPL, 241 values, NaN where absent
   * @param alignmentDb a_c, dB; NaN if it cannot be told
   * @param fault the first check of its own that it does not keep, or that could not be made
   */
  public record Earpiece(double[] levelDb, double alignmentDb, Optional<RegionResult> fault) {}

  /**
   * @param matchDb by grid index, dB; NaN where nothing is asked or the guard band is not known; 0
   *     or below where the guard band leaves no room
   * @param required grid indices at which both earpieces must have data
   * @param optional grid indices that count where both have data
   * @param balanceDb largest |a_L − a_R|
   */
  public record Limits(double[] matchDb, int[] required, int[] optional, double balanceDb) {}

  /**
   * @param goldenDb smoothed, dB SPL; windows likewise, NaN outside regions
   * @param matchDb largest |L − R|, dB, without guard band; NaN where nothing is asked
   */
  public record Lines(
      double[] frequencyHz,
      String smoothing,
      double[] goldenDb,
      double[] lowerDb,
      double[] upperDb,
      double[] matchDb,
      List<Span> regions,
      String earSimulator,
      double specifiedFromHz,
      double specifiedToHz) {
    /** Where a region lies. */
    public record Span(String name, double fromHz, double toHz) {}
  }
}
