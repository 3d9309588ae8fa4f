package evenpair.batches;

import evenpair.acoustics.Grid;
import evenpair.statistics.SpecifiedLimits;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Region;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Takes {@link Quantity quantities} of a batch's units out of its flat arrays. */
final class UnitQuantities {
  private static final List<String> CHANNELS = List.of("left", "right");

  private final FirstPass units;
  private final LimitSet set;

  UnitQuantities(FirstPass units, LimitSet set) {
    this.units = units;
    this.set = set;
  }

  /** Which quantity, of which region and channel. */
  record Key(Quantity quantity, String region, String channel) {}

  /**
   * @return every quantity of these kinds that the limit set limits: level and balance first, then
   *     by region
   */
  List<Key> keys(Set<Quantity> wanted) {
    List<Key> keys = new ArrayList<>();
    add(keys, Quantity.LEVEL, null, wanted);
    add(keys, Quantity.BALANCE, null, wanted);
    for (Region region : set.regions()) {
      for (Quantity quantity : Quantity.values()) {
        boolean match = quantity == Quantity.DIFFERENCE_MEAN || quantity == Quantity.MATCH_MARGIN;
        if (quantity.ofRegion() && (!match || region.match().isPresent())) {
          add(keys, quantity, region.name(), wanted);
        }
      }
    }
    return keys;
  }

  private static void add(List<Key> keys, Quantity quantity, String region, Set<Quantity> wanted) {
    if (!wanted.contains(quantity)) {
      return;
    }
    if (quantity.ofChannel()) {
      CHANNELS.forEach(channel -> keys.add(new Key(quantity, region, channel)));
    } else {
      keys.add(new Key(quantity, region, null));
    }
  }

  /**
   * @return empty if the limit set has no such region, or no such limit in it
   */
  Optional<UnitSeries> find(Key key) {
    return keys(Set.of(key.quantity())).contains(key) ? Optional.of(of(key)) : Optional.empty();
  }

  UnitSeries of(Key key) {
    LimitSet.LevelLimit level = set.level();
    boolean left = "left".equals(key.channel());
    return switch (key.quantity()) {
      case LEVEL ->
          series(
              key,
              left ? units.leftAlignment() : units.rightAlignment(),
              SpecifiedLimits.between(level.lowest(), level.highest()));
      case BALANCE ->
          series(key, balance(), SpecifiedLimits.between(-level.balanceDb(), level.balanceDb()));
      default -> ofRegion(key, left ? units.leftDeviation() : units.rightDeviation());
    };
  }

  private UnitSeries ofRegion(Key key, float[] deviations) {
    Region region =
        set.regions().stream().filter(r -> r.name().equals(key.region())).findFirst().orElseThrow();
    RegionEdges edges = RegionEdges.of(region);
    return switch (key.quantity()) {
      case REGION_MEAN ->
          series(
              key,
              rows(deviations, edges, Reading.MEAN),
              SpecifiedLimits.between(mean(edges.lower()), mean(edges.upper())));
      case BELOW_UPPER ->
          series(key, rows(deviations, edges, Reading.BELOW), SpecifiedLimits.atLeast(0));
      case ABOVE_LOWER ->
          series(key, rows(deviations, edges, Reading.ABOVE), SpecifiedLimits.atLeast(0));
      case MARGIN -> series(key, rows(deviations, edges, Reading.BOTH), SpecifiedLimits.atLeast(0));
      case DIFFERENCE_MEAN -> {
        RegionEdges match = RegionEdges.ofMatch(region);
        yield series(
            key,
            rows(units.difference(), match, Reading.MEAN),
            SpecifiedLimits.between(mean(match.lower()), mean(match.upper())));
      }
      default ->
          series(
              key,
              rows(units.difference(), RegionEdges.ofMatch(region), Reading.BOTH),
              SpecifiedLimits.atLeast(0));
    };
  }

  private static UnitSeries series(Key key, double[] values, SpecifiedLimits limits) {
    return new UnitSeries(key.quantity(), key.region(), key.channel(), values, limits);
  }

  private double[] balance() {
    double[] left = units.leftAlignment();
    double[] right = units.rightAlignment();
    double[] apart = new double[left.length];
    Arrays.setAll(apart, i -> left[i] - right[i]);
    return apart;
  }

  /** What is made of a row's points in a region. A NaN in the row makes the result NaN. */
  private enum Reading {
    MEAN,
    BELOW,
    ABOVE,
    BOTH
  }

  private static double[] rows(float[] flat, RegionEdges edges, Reading reading) {
    double[] values = new double[flat.length / Grid.POINTS];
    for (int row = 0; row < values.length; row++) {
      int start = row * Grid.POINTS + edges.first();
      double sum = 0;
      double below = Double.POSITIVE_INFINITY;
      double above = Double.POSITIVE_INFINITY;
      for (int i = 0; i < edges.points(); i++) {
        double value = flat[start + i];
        sum += value;
        below = Math.min(below, edges.upper()[i] - value);
        above = Math.min(above, value - edges.lower()[i]);
      }
      values[row] =
          switch (reading) {
            case MEAN -> sum / edges.points();
            case BELOW -> below;
            case ABOVE -> above;
            case BOTH -> Math.min(below, above);
          };
    }
    return values;
  }

  private static double mean(double[] values) {
    return Arrays.stream(values).average().orElseThrow();
  }
}
