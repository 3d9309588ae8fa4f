package evenpair.statistics;

import evenpair.statistics.DecisionRisk.Global;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * The integrals of JCGM 106 clause 9 by Gauss-Legendre quadrature on pieces: the integrand bends
 * within a few standard deviations of the mean (scale u0) and of the acceptance limits (scale u_m)
 * and nowhere else, so that pieces which end there make it smooth at any ratio of the scales.
 */
final class GlobalRisk {
  /** Beyond nine standard deviations a normal distribution holds 2e-19. */
  private static final double[] BENDS = {-9, -6, -4, -2, -1, 0, 1, 2, 4, 6, 9};

  /** On −1 … 1; 12 nodes are exact for polynomials up to degree 23, enough on pieces this short. */
  private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(12);

  private static final double DENSITY_AT_MEAN = 1 / Math.sqrt(2 * Math.PI);

  private final DecisionRisk tolerance;
  private final double y0;
  private final double u0;
  private final double um;
  private final double acceptFrom;
  private final double acceptTo;

  GlobalRisk(DecisionRisk tolerance, double y0, double u0, double um, double w) {
    this.tolerance = tolerance;
    this.y0 = y0;
    this.u0 = u0;
    this.um = um;
    this.acceptFrom = tolerance.lower() + w;
    this.acceptTo = tolerance.upper() - w;
  }

  Global risks() {
    double nonconforming = DecisionRisk.outside(tolerance.lower(), tolerance.upper(), y0, u0);
    double accepted = DecisionRisk.between(acceptFrom, acceptTo, y0, Math.hypot(u0, um));
    if (u0 == 0) {
      return alike(nonconforming, accepted);
    }
    return um == 0 ? exact(nonconforming, accepted) : integrated(nonconforming, accepted);
  }

  private Global alike(double nonconforming, double accepted) {
    double rejected = DecisionRisk.outside(acceptFrom, acceptTo, y0, um);
    return nonconforming == 1
        ? new Global(accepted, 0, nonconforming, accepted)
        : new Global(0, rejected, nonconforming, accepted);
  }

  /** The true value itself is compared with the acceptance limits. */
  private Global exact(double nonconforming, double accepted) {
    double both =
        DecisionRisk.between(
            Math.max(acceptFrom, tolerance.lower()), Math.min(acceptTo, tolerance.upper()), y0, u0);
    double conforming = DecisionRisk.between(tolerance.lower(), tolerance.upper(), y0, u0);
    return new Global(
        Math.max(0, accepted - both), Math.max(0, conforming - both), nonconforming, accepted);
  }

  private Global integrated(double nonconforming, double accepted) {
    double consumer =
        integral(Double.NEGATIVE_INFINITY, tolerance.lower(), this::acceptance)
            + integral(tolerance.upper(), Double.POSITIVE_INFINITY, this::acceptance);
    double producer = integral(tolerance.lower(), tolerance.upper(), this::rejection);
    return new Global(consumer, producer, nonconforming, accepted);
  }

  private double acceptance(double truth) {
    return DecisionRisk.between(acceptFrom, acceptTo, truth, um);
  }

  private double rejection(double truth) {
    return DecisionRisk.outside(acceptFrom, acceptTo, truth, um);
  }

  /**
   * @return ∫ g0(η)·chance(η) dη from … to, as far as g0 reaches
   */
  private double integral(double from, double to, DoubleUnaryOperator chance) {
    double first = Math.max(from, y0 + BENDS[0] * u0);
    double last = Math.min(to, y0 + BENDS[BENDS.length - 1] * u0);
    if (!(first < last)) {
      return 0;
    }
    double sum = 0;
    double begin = first;
    for (double end : ends(first, last)) {
      double centre = (begin + end) / 2;
      double half = (end - begin) / 2;
      sum += half * RULE.integrate(x -> weighted(centre + half * x, chance));
      begin = end;
    }
    return sum;
  }

  private double weighted(double truth, DoubleUnaryOperator chance) {
    return density(truth) * chance.applyAsDouble(truth);
  }

  private TreeSet<Double> ends(double first, double last) {
    TreeSet<Double> ends = new TreeSet<>();
    for (double bend : BENDS) {
      ends.add(y0 + bend * u0);
      ends.add(acceptFrom + bend * um);
      ends.add(acceptTo + bend * um);
    }
    ends.removeIf(end -> !(end > first && end < last));
    ends.add(last);
    return ends;
  }

  private double density(double truth) {
    double z = (truth - y0) / u0;
    return DENSITY_AT_MEAN / u0 * Math.exp(-z * z / 2);
  }
}
