package evenpair.traceability;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** What "is it this unit or all of them?" is answered with. */
final class AcrossJson {
  private AcrossJson() {}

  @Schema(name = "UnitAcross")
  record Across(
      String serial,
      String product,
      String tuning,
      UUID inspection,
      int limitSet,
      @Schema(description = "the answer for the region that takes up most of its match limit")
          String answer,
      @Schema(description = "units compared, this one among them") int units,
      @Schema(description = "units that there are") int of,
      int batches,
      @Schema(description = "in the order of a point's values") List<Measure> measures,
      @Schema(description = "every unit by its first inspection, in production order")
          List<Point> points,
      @Schema(description = "nearest by the shape of both channels") List<Near> alikeInShape,
      @Schema(description = "nearest by the left − right curve") List<Near> alikeInDifference,
      @Schema(description = "takes up as much of the match limit, or more, in that region")
          List<Near> asUneven,
      @Schema(description = "the region of asUneven and of the answer", nullable = true)
          String region,
      List<String> notes) {}

  /**
   * @param what left, right, difference (means over the region) or worst-difference
   * @param value this unit's, dB
   * @param percentile share of units below it, equal ones half; of a difference by its size
   * @param standsApart farther from the median than three robust standard deviations; a difference
   *     only by being larger
   * @param batchMedian of this unit's batch
   * @param othersMedian of all other batches; null if there is none
   */
  @Schema(name = "AcrossMeasure")
  record Measure(
      String region,
      String what,
      Double value,
      Double percentile,
      boolean standsApart,
      int units,
      Double median,
      Double batchMedian,
      Double othersMedian) {}

  @Schema(name = "AcrossPoint")
  record Point(
      String serial,
      UUID inspection,
      Instant at,
      String batch,
      String station,
      String verdict,
      boolean shipped,
      List<Double> values) {}

  /**
   * @param db root of the mean square difference, or the size of the worst difference, dB
   */
  @Schema(name = "AcrossUnit")
  record Near(
      String serial,
      UUID inspection,
      String batch,
      Instant at,
      String verdict,
      double db,
      List<Delivery> shipped) {}

  @Schema(name = "AcrossDelivery")
  record Delivery(UUID dispatch, String reference, Instant shippedAt) {}
}
