package evenpair.tolerance;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Smoothing;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Many pairs as judging sees them, in flat arrays of 32-bit floats: deviation d_c = L_c − G − a_c
 * of both channels and L_L − L_R, smoothed; a_c as double. Laid out in blocks of {@link #LANES}
 * pairs, inside a block point by point, so that one limit meets many pairs in one sweep over
 * neighbouring numbers. A block holds pairs of one group only (pairs whose measurement is worth the
 * same).
 *
 * <p>Built for one golden response, smoothing and alignment band; any limits on top of these can be
 * tried on it.
 */
public final class PairTable {
  /** Pairs in a block: three channels of one point in a kilobyte each. */
  public static final int LANES = 256;

  private final Curve golden;
  private final Smoothing smoothing;
  private final Band alignmentBand;
  private final List<Block> blocks = new ArrayList<>();
  private final List<Block> open = new ArrayList<>();
  private int[] blockOf = new int[LANES];
  private int[] laneOf = new int[LANES];
  private int rows;

  /**
   * @param set its smoothing and alignment band are used
   * @param golden unsmoothed
   */
  public PairTable(LimitSet set, GoldenResponse golden) {
    this.smoothing = set.smoothing();
    this.golden = smoothing.apply(golden.level());
    this.alignmentBand = set.level().band();
  }

  /**
   * @param group 0 upwards
   * @param left unsmoothed level, dB SPL, the mean of the seatings
   * @return the pair's row, counted from 0 in the order of adding
   */
  public int add(int group, Curve left, Curve right) {
    while (open.size() <= group) {
      open.add(null);
    }
    Block block = open.get(group);
    if (block == null || block.used == LANES) {
      block = new Block(blocks.size(), group);
      blocks.add(block);
      open.set(group, block);
    }
    if (rows == blockOf.length) {
      blockOf = Arrays.copyOf(blockOf, 2 * rows);
      laneOf = Arrays.copyOf(laneOf, 2 * rows);
    }
    blockOf[rows] = block.place;
    laneOf[rows] = block.used;
    block.rows[block.used] = rows;
    Curve smoothLeft = smoothing.apply(left);
    Curve smoothRight = smoothing.apply(right);
    block.leftOffset[block.used] = fill(block.left, block.used, smoothLeft);
    block.rightOffset[block.used] = fill(block.right, block.used, smoothRight);
    double[] difference = smoothLeft.minus(smoothRight).toArray();
    for (int i = 0; i < Grid.POINTS; i++) {
      block.difference[i * LANES + block.used] = (float) difference[i];
    }
    block.used++;
    return rows++;
  }

  /**
   * @return a_c; NaN, and no deviation, where a point of the alignment band is absent
   */
  private double fill(float[] target, int lane, Curve smooth) {
    Curve offset = smooth.minus(golden);
    double alignment = offset.covers(alignmentBand) ? offset.median(alignmentBand) : Double.NaN;
    double[] values = offset.toArray();
    for (int i = 0; i < Grid.POINTS; i++) {
      target[i * LANES + lane] = (float) (values[i] - alignment);
    }
    return alignment;
  }

  /**
   * @return number of pairs
   */
  public int rows() {
    return rows;
  }

  /**
   * @return d_c of one pair at a grid point, dB; NaN where absent
   */
  public float deviation(int row, Channel channel, int point) {
    Block block = blocks.get(blockOf[row]);
    float[] values = channel == Channel.LEFT ? block.left : block.right;
    return values[point * LANES + laneOf[row]];
  }

  /**
   * @return L_L − L_R of one pair at a grid point, dB; NaN where absent
   */
  public float difference(int row, int point) {
    return blocks.get(blockOf[row]).difference[point * LANES + laneOf[row]];
  }

  /**
   * @return a_c of one pair, dB; NaN where it has none
   */
  public double alignment(int row, Channel channel) {
    Block block = blocks.get(blockOf[row]);
    return (channel == Channel.LEFT ? block.leftOffset : block.rightOffset)[laneOf[row]];
  }

  List<Block> blocks() {
    return blocks;
  }

  /** Pairs of one group. */
  static final class Block {
    final int place;
    final int group;
    final int[] rows = new int[LANES];
    final float[] left = new float[Grid.POINTS * LANES];
    final float[] right = new float[Grid.POINTS * LANES];
    final float[] difference = new float[Grid.POINTS * LANES];
    final double[] leftOffset = new double[LANES];
    final double[] rightOffset = new double[LANES];
    int used;

    Block(int place, int group) {
      this.place = place;
      this.group = group;
    }

    float[] of(Channel channel) {
      return channel == Channel.LEFT ? left : right;
    }

    double[] offset(Channel channel) {
      return channel == Channel.LEFT ? leftOffset : rightOffset;
    }
  }
}
