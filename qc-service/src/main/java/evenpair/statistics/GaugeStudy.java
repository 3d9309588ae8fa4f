package evenpair.statistics;

import org.apache.commons.math3.distribution.FDistribution;

/**
 * A crossed gauge study: every part measured by every station (or operator) the same number of
 * times, taken apart by the two-way analysis of variance with random effects.
 *
 * <p>Model: x = μ + part + station + part·station + repeat. Sums of squares: parts q·r·Σ(x̄_i −
 * x̄)², stations p·r·Σ(x̄_j − x̄)², interaction r·ΣΣ(x̄_ij − x̄_i − x̄_j + x̄)², repeats ΣΣΣ(x −
 * x̄_ij)², for p parts, q stations, r repeats. Variance components, never below 0: repeat =
 * MS_repeat; interaction = (MS_interaction − MS_repeat)/r; station = (MS_station −
 * MS_interaction)/(p·r); part = (MS_part − MS_interaction)/(q·r). When the interaction is pooled,
 * MS_interaction and MS_repeat are both replaced by (SS_interaction + SS_repeat)/(df_interaction +
 * df_repeat) and there is no interaction. Source: the measurement systems analysis manual of the
 * automotive industry, 4th edition (from memory), and any text on variance components.
 *
 * @param parts between parts
 * @param stations between stations
 * @param interaction parts by stations
 * @param repeats between repeats
 * @param pooled whether the interaction was counted as repeats
 * @param repeatability standard deviation between repeats (equipment variation)
 * @param reproducibility standard deviation between stations, their interaction with parts included
 *     (appraiser variation)
 * @param partToPart standard deviation between parts
 */
public record GaugeStudy(
    Source parts,
    Source stations,
    Source interaction,
    Source repeats,
    boolean pooled,
    double repeatability,
    double reproducibility,
    double partToPart) {

  /**
   * @param sumOfSquares SS @param degreesOfFreedom df, 1 upwards
   */
  public record Source(double sumOfSquares, int degreesOfFreedom) {
    /**
     * @return mean square SS/df
     */
    public double meanSquare() {
      return sumOfSquares / degreesOfFreedom;
    }
  }

  /**
   * @param values part, station, repeat: a full block, two parts, two stations and two repeats at
   *     least, all finite
   * @param poolAbove the interaction is pooled with the repeats if the p value of its F test lies
   *     above this; 0 pools always (p is above 0), 1 never. Common practice, no source: 0.25
   * @throws IllegalArgumentException if the block is not full, too small, or holds a number that is
   *     not finite
   */
  public static GaugeStudy of(double[][][] values, double poolAbove) {
    GaugeBlock block = new GaugeBlock(values);
    Source interaction = block.interaction();
    Source repeats = block.repeats();
    boolean pooled = interactionP(interaction, repeats) > poolAbove;
    double within = pooled ? pooledMeanSquare(interaction, repeats) : repeats.meanSquare();
    double crossed = pooled ? within : interaction.meanSquare();
    double stationVariance =
        atLeastZero(
            (block.stations().meanSquare() - crossed) / (block.partCount() * block.repeatCount()));
    double interactionVariance = atLeastZero((crossed - within) / block.repeatCount());
    double partVariance =
        atLeastZero(
            (block.parts().meanSquare() - crossed) / (block.stationCount() * block.repeatCount()));
    return new GaugeStudy(
        block.parts(),
        block.stations(),
        interaction,
        repeats,
        pooled,
        Math.sqrt(within),
        Math.sqrt(stationVariance + interactionVariance),
        Math.sqrt(partVariance));
  }

  /**
   * @return √(repeatability² + reproducibility²): standard deviation of the whole measurement
   */
  public double gauge() {
    return Math.hypot(repeatability, reproducibility);
  }

  /**
   * @return √(gauge² + partToPart²)
   */
  public double total() {
    return Math.hypot(gauge(), partToPart);
  }

  /**
   * @return p value of the F test of interaction against repeats
   */
  public double interactionP() {
    return interactionP(interaction, repeats);
  }

  private static double interactionP(Source interaction, Source repeats) {
    if (repeats.sumOfSquares() == 0) {
      return interaction.sumOfSquares() == 0 ? 1 : 0;
    }
    double f = interaction.meanSquare() / repeats.meanSquare();
    FDistribution distribution =
        new FDistribution(null, interaction.degreesOfFreedom(), repeats.degreesOfFreedom());
    return 1 - distribution.cumulativeProbability(f);
  }

  private static double pooledMeanSquare(Source interaction, Source repeats) {
    return (interaction.sumOfSquares() + repeats.sumOfSquares())
        / (interaction.degreesOfFreedom() + repeats.degreesOfFreedom());
  }

  private static double atLeastZero(double variance) {
    return Math.max(0, variance);
  }
}
