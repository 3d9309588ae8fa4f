package evenpair.products;

import evenpair.acoustics.Band;
import evenpair.acoustics.Sweep;
import evenpair.tolerance.LimitSet.DistortionLimit;
import evenpair.tolerance.LimitSet.Orders;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Reads distortion limits. A limit that asks for harmonics above what a sweep at 48 kHz can show,
 * n·f ≥ 0.9·min(f2, fs/2), or below 50 Hz excitation, is refused here rather than left unjudged on
 * the line.
 */
final class DistortionReader {
  private static final int MOST = 20;

  /** Orders 2 to 5 are measured one by one. */
  private static final int HIGHEST_ORDER = 5;

  private static final double LOWEST_HZ = 50;

  /** High-order distortion sums orders 10 upwards and needs four of them. */
  private static final int FOURTH_HIGH_ORDER = 13;

  private static final double HIGHEST_HARMONIC_HZ = highestHarmonic(Sweep.standard(48_000));

  private DistortionReader() {}

  private static double highestHarmonic(Sweep sweep) {
    return 0.9 * Math.min(sweep.toHz(), sweep.rateHz() / 2);
  }

  static List<DistortionLimit> read(YamlValue value) {
    List<DistortionLimit> limits = new ArrayList<>();
    for (YamlValue element : value.list(1, MOST)) {
      element.map().flatMap(DistortionReader::limit).ifPresent(limits::add);
    }
    return limits;
  }

  private static Optional<DistortionLimit> limit(YamlMap map) {
    var band = map.required("hz").flatMap(Keys::band);
    var orders = map.optional("orders").flatMap(DistortionReader::orders);
    var thd = map.optional("thd-percent").map(v -> v.number(Range.above(0, 100)));
    var highOrder = map.optional("high-order-db").map(v -> v.number(Range.from(-120, 0)));
    map.done();
    if (thd.isPresent() == highOrder.isPresent()) {
      map.refuse(
          thd.isPresent() ? "both thd-percent and high-order-db" : "neither",
          "one of thd-percent and high-order-db");
      return Optional.empty();
    }
    if (map.has("orders") != thd.isPresent()) {
      map.refuse(
          thd.isPresent() ? "thd-percent without orders" : "orders without thd-percent",
          "orders with thd-percent, and only there");
      return Optional.empty();
    }
    int highest = thd.isPresent() ? orders.map(Orders::highest).orElse(2) : FOURTH_HIGH_ORDER;
    band.ifPresent(b -> requireReach(map, b, highest));
    return band.map(b -> new DistortionLimit(b, orders, number(thd), number(highOrder)));
  }

  private static void requireReach(YamlMap map, Band band, int order) {
    if (band.fromHz() < LOWEST_HZ) {
      map.refuse(
          "hz",
          "a start at " + Decimal.text(band.fromHz()) + " Hz",
          "a start at 50 Hz or above: no distortion is measured below");
    }
    if (!(order * band.toHz() < HIGHEST_HARMONIC_HZ)) {
      // the last whole hertz below, so that what is named is itself accepted
      long end = (long) Math.ceil(HIGHEST_HARMONIC_HZ / order) - 1;
      map.refuse(
          "hz",
          "order " + order + " up to " + Decimal.text(band.toHz()) + " Hz",
          "an end of "
              + end
              + " Hz at most, so that "
              + (order == FOURTH_HIGH_ORDER ? "orders 10 to 13 lie" : "order " + order + " lies")
              + " below "
              + Decimal.text(HIGHEST_HARMONIC_HZ)
              + " Hz");
    }
  }

  private static Optional<Orders> orders(YamlValue value) {
    List<YamlValue> ends = value.list(2, 2);
    if (ends.isEmpty()) {
      return Optional.empty();
    }
    Optional<Integer> lowest = ends.get(0).whole(2, HIGHEST_ORDER);
    Optional<Integer> highest = ends.get(1).whole(2, HIGHEST_ORDER);
    if (lowest.isPresent() && highest.isPresent() && lowest.get() > highest.get()) {
      value.refuse("[lowest, highest] with lowest not above highest");
    }
    return lowest.flatMap(l -> highest.map(h -> new Orders(l, h)));
  }

  private static OptionalDouble number(Optional<Optional<Double>> number) {
    return number.flatMap(n -> n).map(OptionalDouble::of).orElse(OptionalDouble.empty());
  }
}
