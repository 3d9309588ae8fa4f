package evenpair.statistics;

import java.util.List;
import java.util.function.DoublePredicate;
import java.util.stream.IntStream;

/**
 * Patterns of points on a control chart that chance seldom makes. A rule signals at the point that
 * completes its pattern. Sources: Western Electric, Statistical Quality Control Handbook (1956); L.
 * S. Nelson, Journal of Quality Technology 16 (1984) 237–239 (both as documented by R's package
 * qcc). They hold for independent values: on moving ranges and moving averages only the first
 * applies.
 */
public enum RunRule {
  /** One point beyond three standard deviations. */
  BEYOND_THREE(1, 1, 3),
  /** Two of three in a row beyond two standard deviations on the same side. */
  TWO_OF_THREE_BEYOND_TWO(2, 3, 2),
  /** Four of five in a row beyond one standard deviation on the same side. */
  FOUR_OF_FIVE_BEYOND_ONE(4, 5, 1),
  /** Eight in a row on one side of the centre. */
  EIGHT_ON_ONE_SIDE(8, 8, 0),
  /** Nine in a row on one side of the centre. */
  NINE_ON_ONE_SIDE(9, 9, 0),
  /** Six in a row, each higher than the last, or each lower. */
  SIX_RISING_OR_FALLING(6),
  /** Fourteen in a row that go up and down in turn. */
  FOURTEEN_ALTERNATING(14),
  /** Fifteen in a row within one standard deviation of the centre. */
  FIFTEEN_WITHIN_ONE(15),
  /** Eight in a row outside one standard deviation, on either side. */
  EIGHT_OUTSIDE_ONE(8);

  /** The four Western Electric rules. */
  public static final List<RunRule> WESTERN_ELECTRIC =
      List.of(BEYOND_THREE, TWO_OF_THREE_BEYOND_TWO, FOUR_OF_FIVE_BEYOND_ONE, EIGHT_ON_ONE_SIDE);

  /** Nelson's eight rules, in his order. */
  public static final List<RunRule> NELSON =
      List.of(
          BEYOND_THREE,
          NINE_ON_ONE_SIDE,
          SIX_RISING_OR_FALLING,
          FOURTEEN_ALTERNATING,
          TWO_OF_THREE_BEYOND_TWO,
          FOUR_OF_FIVE_BEYOND_ONE,
          FIFTEEN_WITHIN_ONE,
          EIGHT_OUTSIDE_ONE);

  private final int wanted;
  private final int window;
  private final double sigmas;

  RunRule(int wanted, int window, double sigmas) {
    this.wanted = wanted;
    this.window = window;
    this.sigmas = sigmas;
  }

  RunRule(int window) {
    this(window, window, Double.NaN);
  }

  /**
   * @return how many points in a row it looks at
   */
  public int window() {
    return window;
  }

  /**
   * @param z distances from the centre in standard deviations, in order
   * @return places of the points that complete the pattern, rising
   */
  public int[] signals(double... z) {
    return IntStream.range(window - 1, z.length).filter(i -> completes(z, i)).toArray();
  }

  private boolean completes(double[] z, int last) {
    int first = last - window + 1;
    return switch (this) {
      case SIX_RISING_OR_FALLING -> steady(z, first, last, 1) || steady(z, first, last, -1);
      case FOURTEEN_ALTERNATING -> alternating(z, first, last);
      case FIFTEEN_WITHIN_ONE -> all(z, first, last, x -> Math.abs(x) < 1);
      case EIGHT_OUTSIDE_ONE -> all(z, first, last, x -> Math.abs(x) > 1);
      default -> oneSided(z, first, last, 1) || oneSided(z, first, last, -1);
    };
  }

  private boolean oneSided(double[] z, int first, int last, int side) {
    long beyond = IntStream.rangeClosed(first, last).filter(i -> side * z[i] > sigmas).count();
    return side * z[last] > sigmas && beyond >= wanted;
  }

  private static boolean steady(double[] z, int first, int last, int direction) {
    return IntStream.range(first, last).allMatch(i -> direction * (z[i + 1] - z[i]) > 0);
  }

  private static boolean alternating(double[] z, int first, int last) {
    return IntStream.range(first, last - 1)
        .allMatch(i -> (z[i + 1] - z[i]) * (z[i + 2] - z[i + 1]) < 0);
  }

  private static boolean all(double[] z, int first, int last, DoublePredicate what) {
    return IntStream.rangeClosed(first, last).allMatch(i -> what.test(z[i]));
  }
}
