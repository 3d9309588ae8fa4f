package evenpair.statistics;

import evenpair.statistics.OneWayAnova.Source;

/**
 * The analysis-of-variance table of a crossed gauge study.
 *
 * @param part between parts
 * @param appraiser between appraisers
 * @param interaction of parts and appraisers
 * @param repeat between trials
 */
public record GaugeTable(Source part, Source appraiser, Source interaction, Source repeat) {
  /**
   * @return F of the interaction against the repeat spread; NaN if nothing spreads
   */
  public double interactionF() {
    return interaction.mean() / repeat.mean();
  }

  /**
   * @return P(F > interactionF); NaN if nothing spreads
   */
  public double interactionP() {
    return FDistributionTail.above(interactionF(), interaction.freedom(), repeat.freedom());
  }

  /**
   * @return interaction and repeat spread together
   */
  public Source pooled() {
    return new Source(
        interaction.squares() + repeat.squares(), interaction.freedom() + repeat.freedom());
  }

  /**
   * @return all squares together
   */
  public double totalSquares() {
    return part.squares() + appraiser.squares() + interaction.squares() + repeat.squares();
  }
}
