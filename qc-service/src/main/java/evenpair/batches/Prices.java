package evenpair.batches;

import evenpair.batches.TrialRisks.Escapes;

/**
 * What units cost that do not go right, in any one currency. A rejected unit is scrapped, or
 * reworked for the share of them that rework is tried on.
 *
 * @param scrap a unit thrown away, 0 upwards
 * @param rework a unit taken apart, mended and measured again, 0 upwards
 * @param escape a unit that is accepted though out of tolerance, 0 upwards
 * @param reworkShare of the rejected units, 0 … 1
 */
record Prices(double scrap, double rework, double escape, double reworkShare) {
  /**
   * Costs of a thousand units made.
   *
   * @param escapedAtLeast NaN where nothing is known of the measurement
   */
  record Cost(double scrapped, double reworked, double escapedAtLeast, double escapedAtMost) {
    double totalAtLeast() {
      return scrapped + reworked + escapedAtLeast;
    }

    double totalAtMost() {
      return scrapped + reworked + escapedAtMost;
    }
  }

  private static final double A_THOUSAND = 1000;

  /**
   * @param rejected share of all units
   */
  Cost of(double rejected, Escapes escapes) {
    return new Cost(
        A_THOUSAND * rejected * (1 - reworkShare) * scrap,
        A_THOUSAND * rejected * reworkShare * rework,
        A_THOUSAND * escapes.atLeast() * escape,
        A_THOUSAND * escapes.atMost() * escape);
  }
}
