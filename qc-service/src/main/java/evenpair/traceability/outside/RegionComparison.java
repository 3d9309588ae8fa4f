package evenpair.traceability.outside;

import evenpair.acoustics.Band;

/**
 * Left − right of both measurements in one region.
 *
 * @param region name in the limit set
 * @param band what of it was compared: where both have data
 * @param theirsDb x, their region mean of left − right
 * @param oursDb X, ours over the same points
 * @param theirExpandedDb U_out, k = 2
 * @param ourExpandedDb U_lab, k = 2
 * @param en (x − X)/√(U_lab² + U_out²), the coverage factor raised for the number of regions
 * @param limitDb the match limit, mean over the compared points; null if the region has none
 * @param outcome of the region
 */
public record RegionComparison(
    String region,
    Band band,
    Double theirsDb,
    Double oursDb,
    Double theirExpandedDb,
    Double ourExpandedDb,
    Double en,
    Double limitDb,
    Outcome outcome) {

  static RegionComparison none(String region, Band band) {
    return new RegionComparison(
        region, band, null, null, null, null, null, null, Outcome.NOT_COMPARED);
  }
}
