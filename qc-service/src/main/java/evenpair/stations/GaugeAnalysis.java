package evenpair.stations;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.statistics.GaugeResult;
import evenpair.statistics.GaugeStudy;
import evenpair.tolerance.Channel;
import evenpair.tolerance.GoldenResponse;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Region;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/**
 * What a complete gauge study says, by grid point and by region, of what is judged: levels, left −
 * right, the aligned deviation from golden, its offset a_c and the balance a_L − a_R. All from
 * curves smoothed as the limit set says. Pure.
 *
 * @param level of each channel by grid point; null where a measurement has no data
 * @param deviation the same less each measurement's own offset
 * @param match of left − right by grid point
 * @param regions of region means, level of each channel and left − right
 * @param offset of a_c of each channel; empty if the alignment band has no data
 * @param balance of a_L − a_R
 */
record GaugeAnalysis(
    Map<Channel, GaugeResult[]> level,
    Map<Channel, GaugeResult[]> deviation,
    GaugeResult[] match,
    List<RegionMeans> regions,
    Map<Channel, GaugeResult> offset,
    Optional<GaugeResult> balance) {

  /**
   * @param quantity {@code left}, {@code right} or {@code left-right}
   * @param result empty if a measurement has no data in the whole region
   */
  record RegionMeans(Region region, String quantity, Optional<GaugeResult> result) {}

  private record Pair(
      Curve left, Curve right, Curve difference, double leftOffset, double rightOffset) {
    Curve level(Channel channel) {
      return channel == Channel.LEFT ? left : right;
    }

    double offset(Channel channel) {
      return channel == Channel.LEFT ? leftOffset : rightOffset;
    }
  }

  /**
   * @param measured one a measurement, in the order of {@link GaugeStudy#index}
   */
  static GaugeAnalysis of(
      GaugeStudy design,
      List<MeasuredSides> measured,
      LimitSet set,
      GoldenResponse golden,
      double poolAbove) {
    Curve target = set.smoothing().apply(golden.level());
    List<Pair> pairs = measured.stream().map(sides -> pair(sides, set, target)).toList();
    Work work = new Work(design, pairs, poolAbove);
    Map<Channel, GaugeResult[]> level = new EnumMap<>(Channel.class);
    Map<Channel, GaugeResult[]> deviation = new EnumMap<>(Channel.class);
    Map<Channel, GaugeResult> offset = new EnumMap<>(Channel.class);
    for (Channel channel : Channel.values()) {
      level.put(channel, work.points(pair -> pair.level(channel)));
      deviation.put(channel, work.points(pair -> pair.level(channel).plus(-pair.offset(channel))));
      work.one(pair -> pair.offset(channel)).ifPresent(result -> offset.put(channel, result));
    }
    return new GaugeAnalysis(
        level,
        deviation,
        work.points(Pair::difference),
        regions(work, set),
        offset,
        work.one(pair -> pair.leftOffset() - pair.rightOffset()));
  }

  private static Pair pair(MeasuredSides sides, LimitSet set, Curve target) {
    Curve left = set.smoothing().apply(sides.level(Channel.LEFT));
    Curve right = set.smoothing().apply(sides.level(Channel.RIGHT));
    return new Pair(
        left, right, left.minus(right), offset(left, set, target), offset(right, set, target));
  }

  /** a_c, the median of L − G over the alignment band; NaN, an absent number, without data. */
  private static double offset(Curve level, LimitSet set, Curve target) {
    Curve fromGolden = level.minus(target);
    return fromGolden.covers(set.level().band())
        ? fromGolden.median(set.level().band())
        : Double.NaN;
  }

  private static List<RegionMeans> regions(Work work, LimitSet set) {
    List<RegionMeans> regions = new ArrayList<>();
    for (Region region : set.regions()) {
      for (Channel channel : Channel.values()) {
        regions.add(
            new RegionMeans(
                region, channel.word(), work.one(pair -> mean(pair.level(channel), region))));
      }
      regions.add(
          new RegionMeans(region, "left-right", work.one(pair -> mean(pair.difference(), region))));
    }
    return regions;
  }

  private static double mean(Curve curve, Region region) {
    return region.band().points() > 0 && curve.covers(region.band())
        ? curve.mean(region.band())
        : Double.NaN;
  }

  /** One table is used again for every quantity. */
  private record Work(GaugeStudy design, List<Pair> pairs, double poolAbove) {
    GaugeResult[] points(Function<Pair, Curve> quantity) {
      double[][] curves =
          pairs.stream().map(pair -> quantity.apply(pair).toArray()).toArray(double[][]::new);
      GaugeResult[] results = new GaugeResult[Grid.POINTS];
      double[] table = new double[curves.length];
      for (int i = 0; i < results.length; i++) {
        for (int m = 0; m < table.length; m++) {
          table[m] = curves[m][i];
        }
        results[i] = analyse(table).orElse(null);
      }
      return results;
    }

    Optional<GaugeResult> one(ToDoubleFunction<Pair> quantity) {
      return analyse(pairs.stream().mapToDouble(quantity).toArray());
    }

    private Optional<GaugeResult> analyse(double[] table) {
      for (double value : table) {
        if (Double.isNaN(value)) {
          return Optional.empty();
        }
      }
      return Optional.of(design.analyse(table, poolAbove));
    }
  }
}
