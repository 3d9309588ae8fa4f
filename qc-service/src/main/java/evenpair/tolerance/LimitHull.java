package evenpair.tolerance;

import evenpair.acoustics.Band;
import evenpair.acoustics.Grid;
import evenpair.tolerance.LimitProposal.Scaled;
import evenpair.tolerance.LimitProposal.Shape;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;

/** Draws limits around m ± t·s, as narrow as a limit of that form can be, rounded outward. */
final class LimitHull {
  /** Limits are written in tenths of a decibel. */
  private static final double STEPS = 10;

  private final Shape shape;
  private final double t;
  private final List<Guard> guards;

  LimitHull(Shape shape, double t, List<Guard> guards) {
    this.shape = shape;
    this.t = t;
    this.guards = guards;
  }

  double lowestLevel() {
    return down(shape.level() - t * shape.levelScale() - widest(Guard::offset));
  }

  double highestLevel() {
    return up(shape.level() + t * shape.levelScale() + widest(Guard::offset));
  }

  double balance() {
    return up(t * shape.balanceScale() + widest(Guard::balance));
  }

  private interface Of {
    double band(Guard guard);
  }

  /** Unknown guard bands are left out: the set then judges nothing there anyway. */
  private double widest(Of which) {
    return guards.stream().mapToDouble(which::band).filter(Double::isFinite).max().orElse(0);
  }

  Region around(Region region, Scaled scaled) {
    boolean sloped = sloped(region.lower()) || sloped(region.upper());
    Span lower =
        scaled.windows() ? negative(above(region.band(), sloped, this::below)) : region.lower();
    Span upper = scaled.windows() ? above(region.band(), sloped, this::over) : region.upper();
    Optional<Span> match =
        region.match().map(m -> scaled.match() ? above(region.band(), sloped(m), this::apart) : m);
    return new Region(region.name(), region.band(), lower, upper, match, region.required());
  }

  private static boolean sloped(Span span) {
    return span.start() != span.end();
  }

  private static Span negative(Span span) {
    return new Span(-span.start(), -span.end());
  }

  private double over(int i) {
    return shape.centre()[i] + t * shape.scale()[i] + widest(guard -> guard.level(i));
  }

  private double below(int i) {
    return t * shape.scale()[i] - shape.centre()[i] + widest(guard -> guard.level(i));
  }

  private double apart(int i) {
    return t * shape.differenceScale()[i] + widest(guard -> guard.match(i));
  }

  private static Span above(Band band, boolean sloped, IntToDoubleFunction values) {
    return sloped ? line(band, values) : constant(band, values);
  }

  private static Span constant(Band band, IntToDoubleFunction values) {
    double highest = Double.NEGATIVE_INFINITY;
    for (int i = band.firstIndex(); i <= band.lastIndex(); i++) {
      highest = Math.max(highest, values.applyAsDouble(i));
    }
    return Span.constant(up(highest));
  }

  /**
   * The lowest line, on average over the points, that no value rises above: the edge of their
   * convex hull over the middle of the points. Places are those at which a span is read.
   */
  private static Span line(Band band, IntToDoubleFunction values) {
    Span places = new Span(0, 1);
    int n = band.points();
    double[] x = new double[n];
    double[] y = new double[n];
    double middle = 0;
    for (int k = 0; k < n; k++) {
      x[k] = places.at(Grid.hz(band.firstIndex() + k), band);
      y[k] = values.applyAsDouble(band.firstIndex() + k);
      middle += x[k] / n;
    }
    double best = Double.POSITIVE_INFINITY;
    Span span = null;
    for (int left = 0; left < n && x[left] <= middle; left++) {
      // the steepest way up to any point on the right lies above all of them
      int right = farthest(x, y, left, middle);
      double slope = right < 0 ? 0 : (y[right] - y[left]) / (x[right] - x[left]);
      double start = y[left] - slope * x[left];
      if (start + slope * middle < best && holdsAll(x, y, start, slope)) {
        best = start + slope * middle;
        span = new Span(up(start), up(start + slope));
      }
    }
    return span == null ? constant(band, values) : span;
  }

  private static int farthest(double[] x, double[] y, int left, double middle) {
    int steepest = -1;
    double slope = Double.NEGATIVE_INFINITY;
    for (int k = left + 1; k < x.length; k++) {
      double to = (y[k] - y[left]) / (x[k] - x[left]);
      if (x[k] >= middle && x[k] > x[left] && to > slope) {
        slope = to;
        steepest = k;
      }
    }
    return steepest;
  }

  /** A billionth of a decibel is the rounding of the line itself. */
  private static boolean holdsAll(double[] x, double[] y, double start, double slope) {
    for (int k = 0; k < x.length; k++) {
      if (y[k] > start + slope * x[k] + 1e-9) {
        return false;
      }
    }
    return true;
  }

  private static double up(double value) {
    return Math.ceil(value * STEPS) / STEPS;
  }

  private static double down(double value) {
    return Math.floor(value * STEPS) / STEPS;
  }
}
