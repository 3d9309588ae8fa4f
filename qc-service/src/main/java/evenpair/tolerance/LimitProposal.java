package evenpair.tolerance;

import evenpair.acoustics.Grid;
import evenpair.statistics.CoverageRank;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Limits that a wanted share of units keeps, with a stated confidence, whatever their distribution.
 *
 * <p>The units are split in two. One half tells the shape: centre m(f) and scale s(f) of the
 * deviations of both channels, scale s_Δ(f) of left − right (root mean square), and the same of
 * level and balance. Each unit of the other half is then one number, its largest |d − m|/s, |L −
 * R|/s_Δ, |a − m_a|/s_a or |a_L − a_R|/s_b; the k-th smallest of these scales all limits together
 * (see {@link CoverageRank}). Because the shape does not know the other half, the promise needs no
 * assumption beyond units that come independently from one population. Limits are then drawn around
 * m ± t·s by region, outward, which only lets more units pass.
 */
public final class LimitProposal {
  /** A point at which units do not differ at all would divide by 0; so little is never a limit. */
  private static final double LEAST_SCALE_DB = 0.01;

  private final LimitSet set;
  private final PairTable table;
  private final Shape shape;

  /**
   * Where units lie.
   *
   * @param centre m(f), dB; NaN outside the regions or without data
   * @param scale s(f), dB, above 0
   * @param differenceScale s_Δ(f), dB, above 0
   * @param level centre and scale of a_c, dB
   * @param balanceScale s_b, dB, above 0
   */
  public record Shape(
      double[] centre,
      double[] scale,
      double[] differenceScale,
      double level,
      double levelScale,
      double balanceScale) {}

  /**
   * @param set whose regions, alignment band and bands the limits are for
   * @param table built for that set
   * @param shaping rows that tell the shape, 2 or more
   * @throws IllegalArgumentException if there are fewer than 2
   */
  public LimitProposal(LimitSet set, PairTable table, int[] shaping) {
    if (shaping.length < 2) {
      throw new IllegalArgumentException("a shape needs 2 units, was given " + shaping.length);
    }
    this.set = set;
    this.table = table;
    this.shape = shape(shaping);
  }

  public Shape shape() {
    return shape;
  }

  private Shape shape(int[] rows) {
    double[] centre = new double[Grid.POINTS];
    double[] scale = new double[Grid.POINTS];
    double[] differenceScale = new double[Grid.POINTS];
    for (int point = 0; point < Grid.POINTS; point++) {
      int i = point;
      Spread both = new Spread();
      Spread apart = new Spread();
      for (int row : rows) {
        both.add(table.deviation(row, Channel.LEFT, i));
        both.add(table.deviation(row, Channel.RIGHT, i));
        apart.add(table.difference(row, i));
      }
      centre[i] = both.mean();
      scale[i] = both.sd();
      differenceScale[i] = apart.rms();
    }
    Spread level = new Spread();
    Spread balance = new Spread();
    for (int row : rows) {
      double left = table.alignment(row, Channel.LEFT);
      double right = table.alignment(row, Channel.RIGHT);
      level.add(left);
      level.add(right);
      balance.add(left - right);
    }
    return new Shape(centre, scale, differenceScale, level.mean(), level.sd(), balance.rms());
  }

  /** Sums about the first value, so that nothing cancels. */
  private static final class Spread {
    private int n;
    private double first;
    private double sum;
    private double squares;
    private double rawSquares;

    void add(double value) {
      if (Double.isNaN(value)) {
        return;
      }
      if (n == 0) {
        first = value;
      }
      n++;
      sum += value - first;
      squares += (value - first) * (value - first);
      rawSquares += value * value;
    }

    double mean() {
      return n == 0 ? Double.NaN : first + sum / n;
    }

    double sd() {
      double variance = n < 2 ? Double.NaN : (squares - sum * sum / n) / (n - 1);
      return Math.max(LEAST_SCALE_DB, Math.sqrt(Math.max(0, variance)));
    }

    double rms() {
      return n == 0 ? Double.NaN : Math.max(LEAST_SCALE_DB, Math.sqrt(rawSquares / n));
    }
  }

  /** Which limits are scaled; the others stay as the set has them, and no promise holds. */
  public record Scaled(boolean windows, boolean match, boolean level, boolean balance) {
    public static final Scaled ALL = new Scaled(true, true, true, true);
  }

  /**
   * @return each row's one number; infinite where a required region or the level has no data
   */
  public double[] numbers(int[] rows, Scaled scaled) {
    return numbers(table, rows, scaled);
  }

  /**
   * As {@link #numbers(int[], Scaled)}, of units in another table that was built for the same set.
   */
  public double[] numbers(PairTable others, int[] rows, Scaled scaled) {
    return Arrays.stream(rows).mapToDouble(row -> number(others, row, scaled)).toArray();
  }

  private double number(PairTable table, int row, Scaled scaled) {
    double left = table.alignment(row, Channel.LEFT);
    double right = table.alignment(row, Channel.RIGHT);
    double largest = 0;
    if (scaled.level) {
      largest = Math.max(Math.abs(left - shape.level), Math.abs(right - shape.level));
      largest /= shape.levelScale;
    }
    if (scaled.balance) {
      largest = Math.max(largest, Math.abs(left - right) / shape.balanceScale);
    }
    if (Double.isNaN(left) || Double.isNaN(right)) {
      return Double.POSITIVE_INFINITY;
    }
    for (Region region : set.regions()) {
      double ofRegion = ofRegion(shape, table, row, region, scaled);
      if (Double.isNaN(ofRegion)) {
        ofRegion = region.required() ? Double.POSITIVE_INFINITY : 0;
      }
      largest = Math.max(largest, ofRegion);
    }
    return largest;
  }

  /** NaN where a point is absent. */
  private static double ofRegion(
      Shape shape, PairTable table, int row, Region region, Scaled scaled) {
    double largest = 0;
    for (int i = region.band().firstIndex(); i <= region.band().lastIndex(); i++) {
      for (Channel channel : Channel.values()) {
        double d = Math.abs(table.deviation(row, channel, i) - shape.centre[i]) / shape.scale[i];
        largest = Math.max(largest, scaled.windows || Double.isNaN(d) ? d : 0);
      }
      if (scaled.match && region.match().isPresent()) {
        largest = Math.max(largest, Math.abs(table.difference(row, i)) / shape.differenceScale[i]);
      }
    }
    return largest;
  }

  /**
   * @param counting rows of the other half
   * @return t, by which every scale is multiplied; empty if there are too few units for the promise
   */
  public Optional<Double> scale(int[] counting, CoverageRank wanted, Scaled scaled) {
    OptionalInt rank = counting.length == 0 ? OptionalInt.empty() : wanted.of(counting.length);
    if (rank.isEmpty()) {
      return Optional.empty();
    }
    double[] numbers = numbers(counting, scaled);
    Arrays.sort(numbers);
    return Optional.of(numbers[rank.getAsInt() - 1]);
  }

  /**
   * Limits at m ± t·s, widened by the guard bands where the set has them, drawn around by region as
   * the set draws them (one value, or a line from start to end), and rounded outward to 0.1 dB.
   *
   * @param t finite
   * @param uncertainty largest of any unit's station; used by a guarded set only
   * @param version of the set that comes out
   * @return the set with new limits, all else as it was
   */
  public LimitSet limits(
      double t, Scaled scaled, List<Optional<Uncertainty>> uncertainty, int version) {
    List<Guard> guards = uncertainty.stream().map(u -> new Guard(set.decision(), u)).toList();
    LimitHull hull = new LimitHull(shape, t, guards);
    LimitSet.LevelLimit level = set.level();
    LimitSet.LevelLimit proposed =
        new LimitSet.LevelLimit(
            level.band(),
            scaled.level ? hull.lowestLevel() : level.lowest(),
            scaled.level ? hull.highestLevel() : level.highest(),
            scaled.balance ? hull.balance() : level.balanceDb());
    List<Region> regions =
        set.regions().stream().map(region -> hull.around(region, scaled)).toList();
    return new LimitSet(
        set.product(),
        set.tuning(),
        version,
        set.earSimulator(),
        set.golden(),
        set.drive(),
        set.smoothing(),
        proposed,
        regions,
        set.distortion(),
        set.polarity(),
        set.idleNoiseDba(),
        set.signalToNoiseDb(),
        set.seating(),
        set.verificationDb(),
        set.decision());
  }
}
