package evenpair.stations;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** What the API says about gauge studies and the uncertainty budget. */
final class GaugeViews {
  private GaugeViews() {}

  /**
   * @param appraiserKind {@code operators} or {@code stations}
   * @param appraisers their names; a place such as {@code #2} for an operator whose name has been
   *     erased
   * @param state {@code collecting} or {@code complete}
   * @param missing what is still to be measured, in the plan's order
   * @param validUntil until when a complete study holds; null before
   * @param analysis null until complete; left out of lists
   */
  @Schema(name = "GaugeStudy")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Study(
      UUID id,
      String station,
      String product,
      String tuning,
      @Schema(allowableValues = {"operators", "stations"}) String appraiserKind,
      List<String> parts,
      List<String> appraisers,
      int seatings,
      Instant plannedAt,
      @Schema(allowableValues = {"collecting", "complete"}) String state,
      @Schema(example = "54") int measured,
      @Schema(example = "90") int wanted,
      List<Place> missing,
      Instant validUntil,
      Analysis analysis) {}

  @Schema(name = "GaugeStudyList")
  record Studies(List<Study> items) {}

  @Schema(name = "GaugePlace")
  record Place(String part, String appraiser, int seating) {}

  /**
   * @param method how it was analysed
   * @param limitSet version whose smoothing, regions and alignment band were used
   * @param ndcFactor distinct categories = this · part spread / gauge spread
   * @param regions of region means: {@code left}, {@code right}, {@code left-right}
   * @param numbers of {@code offset-left}, {@code offset-right} (a_c) and {@code balance}
   */
  @Schema(name = "GaugeAnalysis")
  record Analysis(
      String method,
      int limitSet,
      double ndcFactor,
      List<Row> regions,
      List<Row> numbers,
      double[] frequencyHz,
      ByFrequency left,
      ByFrequency right,
      ByFrequency leftMinusRight) {}

  /**
   * @param region its name; null for a number
   * @param result null if a measurement has no data there
   */
  @Schema(name = "GaugeRow")
  record Row(String region, String quantity, Result result) {}

  /**
   * Standard deviations in dB, percentages unrounded.
   *
   * @param pooled whether interaction was pooled with the repeat spread
   * @param interactionP null if nothing spreads
   * @param takenForZero components that came out below 0
   * @param grrPercent 100 · gauge spread / total spread; null if nothing spreads
   * @param ndc number of distinct categories, unrounded; null if the gauge does not spread
   */
  @Schema(name = "GaugeResult")
  record Result(
      boolean pooled,
      Double interactionP,
      @Schema(example = "0.12") double repeatDb,
      @Schema(example = "0.05") double appraiserDb,
      double interactionDb,
      @Schema(example = "0.13") double grrDb,
      @Schema(example = "0.9") double partDb,
      double totalDb,
      Double grrPercent,
      Double contributionPercent,
      Double ndc,
      List<String> takenForZero,
      List<Source> table) {}

  /**
   * A row of the analysis of variance.
   *
   * @param source {@code part}, {@code appraiser}, {@code interaction} or {@code repeat}
   */
  @Schema(name = "GaugeSource")
  record Source(String source, int freedom, double squares, double meanSquare) {}

  /** The same by grid point; null where a measurement has no data or nothing spreads. */
  @Schema(name = "GaugeByFrequency")
  record ByFrequency(
      double[] repeatDb,
      double[] reproducibilityDb,
      double[] grrDb,
      double[] partDb,
      double[] grrPercent,
      double[] ndc) {}

  /**
   * Standard uncertainties in dB by their sources; {@code expandedDb} has k = 2.
   *
   * @param study the gauge study
   * @param seatings for how many valid seatings: of the active limit set, or as asked
   * @param deviation of one earpiece's aligned deviation from golden
   * @param match of left − right
   * @param level of one earpiece's level a_c
   * @param balance of a_L − a_R
   * @param regions the largest expanded uncertainty in each region
   */
  @Schema(name = "UncertaintyBudget")
  record Budget(
      String station,
      String product,
      String tuning,
      UUID study,
      Instant studiedAt,
      Instant validUntil,
      int seatings,
      String method,
      List<BudgetRegion> regions,
      BudgetNumber level,
      BudgetNumber balance,
      double[] frequencyHz,
      BudgetCurve deviation,
      BudgetCurve match) {}

  @Schema(name = "BudgetRegion")
  record BudgetRegion(
      String region,
      @Schema(example = "0.31") Double deviationExpandedDb,
      @Schema(example = "8483.4") Double deviationAtHz,
      @Schema(example = "0.28") Double matchExpandedDb,
      Double matchAtHz) {}

  @Schema(name = "BudgetNumber")
  record BudgetNumber(
      double repeatDb,
      double reproducibilityDb,
      double calibratorDb,
      double correctionDb,
      double combinedDb,
      double expandedDb) {}

  @Schema(name = "BudgetCurve")
  record BudgetCurve(
      double[] repeatDb,
      double[] reproducibilityDb,
      double[] correctionDb,
      double[] combinedDb,
      double[] expandedDb) {}
}
