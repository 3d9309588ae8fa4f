package evenpair.statistics;

import evenpair.statistics.OneWayAnova.Source;
import java.util.EnumSet;
import java.util.Set;

/**
 * What a crossed gauge study says about one quantity. Standard deviations are in the quantity's own
 * unit; all percentages are unrounded.
 *
 * @param table the analysis of variance
 * @param pooled whether interaction was pooled with the repeat spread
 * @param repeatVariance EV², 0 upwards
 * @param appraiserVariance AV², 0 upwards
 * @param interactionVariance of parts and appraisers, 0 upwards; 0 when pooled
 * @param partVariance PV², 0 upwards
 * @param takenForZero components that came out below 0 and were taken for 0
 */
public record GaugeResult(
    GaugeTable table,
    boolean pooled,
    double repeatVariance,
    double appraiserVariance,
    double interactionVariance,
    double partVariance,
    Set<Component> takenForZero) {
  /** The factor that the usual tables print for √2; exact √2 may be given instead. */
  public static final double USUAL_NDC_FACTOR = 1.41;

  /** Variance components that can come out below 0. */
  public enum Component {
    APPRAISER,
    INTERACTION,
    PART
  }

  public GaugeResult {
    takenForZero = Set.copyOf(takenForZero);
  }

  static GaugeResult of(GaugeTable table, int parts, int appraisers, int trials, double poolAbove) {
    // without any spread there is no p, and nothing that pooling would change
    boolean pooled = !(table.interactionP() <= poolAbove);
    Source error = pooled ? table.pooled() : table.interaction();
    double repeat = pooled ? error.mean() : table.repeat().mean();
    Set<Component> zero = EnumSet.noneOf(Component.class);
    double interaction =
        pooled ? 0 : heldAboveZero((error.mean() - repeat) / trials, Component.INTERACTION, zero);
    double appraiser =
        heldAboveZero(
            (table.appraiser().mean() - error.mean()) / (parts * trials),
            Component.APPRAISER,
            zero);
    double part =
        heldAboveZero(
            (table.part().mean() - error.mean()) / (appraisers * trials), Component.PART, zero);
    return new GaugeResult(table, pooled, repeat, appraiser, interaction, part, zero);
  }

  /**
   * @return EV, the spread of repeated measurements by one appraiser
   */
  public double ev() {
    return Math.sqrt(repeatVariance);
  }

  /**
   * @return AV, the spread between appraisers
   */
  public double av() {
    return Math.sqrt(appraiserVariance);
  }

  /**
   * @return √(AV² + interaction²): all that changes with the appraiser
   */
  public double reproducibility() {
    return Math.sqrt(appraiserVariance + interactionVariance);
  }

  /**
   * @return GRR = √(EV² + AV² + interaction²)
   */
  public double grr() {
    return Math.sqrt(grrVariance());
  }

  /**
   * @return PV, the spread between parts
   */
  public double pv() {
    return Math.sqrt(partVariance);
  }

  /**
   * @return TV = √(GRR² + PV²)
   */
  public double tv() {
    return Math.sqrt(grrVariance() + partVariance);
  }

  /**
   * @return 100·GRR/TV; NaN if nothing spreads
   */
  public double grrPercent() {
    return 100 * grr() / tv();
  }

  /**
   * @param variance one of the components, or their sum
   * @return its share of TV² in percent; NaN if nothing spreads
   */
  public double contributionPercent(double variance) {
    return 100 * variance / (grrVariance() + partVariance);
  }

  /**
   * @return GRR²
   */
  public double grrVariance() {
    return repeatVariance + appraiserVariance + interactionVariance;
  }

  /**
   * Number of distinct categories, unrounded.
   *
   * @param factor {@link #USUAL_NDC_FACTOR} or √2
   * @return factor·PV/GRR; infinite or NaN if measurements do not spread
   */
  public double ndc(double factor) {
    return factor * pv() / grr();
  }

  private static double heldAboveZero(double variance, Component component, Set<Component> zero) {
    if (variance < 0) {
      zero.add(component);
      return 0;
    }
    return variance;
  }
}
