package evenpair.tolerance;

import evenpair.tolerance.PairTable.Block;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * Level, balance, windows and match of one limit set over a {@link PairTable}: the same outcome as
 * {@link Judge}'s, thousands of times faster, because nothing is built for a pair.
 *
 * <p>The table holds 32-bit floats. A pair whose margin in any check comes so near to 0 that their
 * rounding could turn it is not decided here but handed back as {@link Outcome#NEAR}, to be judged
 * by {@link Judge} itself.
 */
public final class FlatJudge {
  /**
   * Deviations up to 64 dB are rounded by 4e-6 dB at most, limits up to 40 dB by 2e-6 dB, and their
   * difference once more: together below 1e-5 dB. Ten times that is handed back.
   */
  static final float TOO_NEAR_DB = 1e-4f;

  private final LimitSet set;
  private final List<FlatCheck> checks = new ArrayList<>();
  private final List<Group> groups;

  private record Group(Guard guard, boolean undecidable, List<GroupLimits> regions) {}

  /**
   * @param golden unsmoothed; the one that the table was built for
   * @param uncertainty by group of the table; used by a guarded set only, where a group without it
   *     is given no verdict
   */
  public FlatJudge(LimitSet set, GoldenResponse golden, List<Optional<Uncertainty>> uncertainty) {
    this.set = set;
    checks.add(new FlatCheck(ReasonKind.LEVEL, null, Channel.LEFT));
    checks.add(new FlatCheck(ReasonKind.LEVEL, null, Channel.RIGHT));
    checks.add(new FlatCheck(ReasonKind.BALANCE, null, null));
    for (Region region : set.regions()) {
      checks.add(new FlatCheck(ReasonKind.WINDOW, region.name(), Channel.LEFT));
      checks.add(new FlatCheck(ReasonKind.WINDOW, region.name(), Channel.RIGHT));
      if (region.match().isPresent()) {
        checks.add(new FlatCheck(ReasonKind.MATCH, region.name(), null));
      }
    }
    Judge judge = Judges.forLimits(set, golden);
    this.groups = uncertainty.stream().map(u -> group(u, judge, golden)).toList();
  }

  /**
   * Whether a group can be decided does not depend on the pair: a pair that is golden itself tells,
   * by the judge's own word.
   */
  private Group group(Optional<Uncertainty> uncertainty, Judge judge, GoldenResponse golden) {
    Guard guard = new Guard(set.decision(), uncertainty);
    MeasuredChannel perfect = new MeasuredChannel(golden.level(), golden.phaseDeg());
    boolean undecidable =
        set.decision().guarded()
            && judge.judge(new MeasuredPair(perfect, perfect), uncertainty).reasons().stream()
                .map(Reason::kind)
                .anyMatch(
                    kind ->
                        kind == ReasonKind.UNCERTAINTY_MISSING
                            || kind == ReasonKind.GUARD_TOO_WIDE);
    return new Group(
        guard,
        undecidable,
        set.regions().stream().map(region -> new GroupLimits(region, guard)).toList());
  }

  /**
   * @return level left, level right, balance, then by region window left, window right and, where
   *     there is a limit, match
   */
  public List<FlatCheck> checks() {
    return Collections.unmodifiableList(checks);
  }

  /**
   * @return what becomes of every pair of the table
   */
  public Outcome judge(PairTable table) {
    return judge(table, new boolean[table.rows()]);
  }

  /**
   * @param leftOut by row: pairs that are marked {@link Outcome#NEAR} and count nowhere
   * @return what becomes of every other pair of the table
   */
  public Outcome judge(PairTable table, boolean[] leftOut) {
    Outcome outcome = new Outcome(table.rows(), checks.size());
    BlockSweep sweep = new BlockSweep(set, checks.size());
    for (Block block : table.blocks()) {
      Group group = groups.get(block.group);
      if (group.undecidable) {
        for (int lane = 0; lane < block.used; lane++) {
          int row = block.rows[lane];
          outcome.state[row] = leftOut[row] ? Outcome.NEAR : Outcome.UNDECIDABLE;
        }
      } else {
        sweep.over(block, group.guard, group.regions);
        sweep.into(block, leftOut, outcome);
      }
    }
    return outcome;
  }

  /**
   * The scale at which a pair would just keep windows and match limits, were each window scaled
   * about its own middle and each match limit alike: max of (|d − middle| + w)/half and (|L − R| +
   * w)/match over regions and points, w the guard band where conditional passes are refused.
   *
   * @return by row; NaN where a required region has no data, or the guard band is not known
   */
  public float[] criticalScale(PairTable table) {
    float[] scale = new float[table.rows()];
    float[] worst = new float[PairTable.LANES];
    for (Block block : table.blocks()) {
      Group group = groups.get(block.group);
      Arrays.fill(worst, group.undecidable ? Float.NaN : 0);
      if (!group.undecidable) {
        ScaleSweep.over(block, group.regions, refusesConditionalPass(), worst);
      }
      for (int lane = 0; lane < block.used; lane++) {
        scale[block.rows[lane]] = worst[lane];
      }
    }
    return scale;
  }

  private boolean refusesConditionalPass() {
    return set.decision().guarded() && !set.decision().acceptConditionalPass();
  }

  /** What becomes of the pairs of a table. Arrays of the caller's own, by row or by check. */
  public static final class Outcome {
    /** Level, balance, windows and match are kept. */
    public static final byte PASS = 0;

    /** One of them is not. */
    public static final byte FAIL = 1;

    /** A required region or the alignment band has no data. */
    public static final byte NO_DATA = 2;

    /** A guarded set that cannot be decided: no uncertainty, or guard bands that leave nothing. */
    public static final byte UNDECIDABLE = 3;

    /** Too near to a limit for 32 bits, or left out: for the judge itself. */
    public static final byte NEAR = 4;

    /** No check, in {@link #sole}. */
    public static final short NONE = -1;

    /** By row: one of the states. */
    public final byte[] state;

    /** By row: true for a pass of which a check lies inside its guard band. */
    public final boolean[] conditional;

    /** By row: how many checks fail; 0 unless the state is FAIL. */
    public final short[] failing;

    /** By row: the failing check if it is the only one, else {@link #NONE}. */
    public final short[] sole;

    /** By check: how many pairs fail it; pairs that are too near count nowhere. */
    public final int[] failures;

    /** By check: the smallest margin of any pair, dB; infinite without one. */
    public final float[] worstMargin;

    /** By check: the row of that pair; −1 without one. */
    public final int[] worstRow;

    Outcome(int rows, int checks) {
      this.state = new byte[rows];
      this.conditional = new boolean[rows];
      this.failing = new short[rows];
      this.sole = new short[rows];
      this.failures = new int[checks];
      this.worstMargin = new float[checks];
      this.worstRow = new int[checks];
      Arrays.fill(sole, NONE);
      Arrays.fill(worstRow, -1);
      Arrays.fill(worstMargin, Float.POSITIVE_INFINITY);
    }
  }
}
