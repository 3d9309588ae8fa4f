package evenpair.pairing;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** What requests and answers of pairings look like. */
final class PairingJson {
  private PairingJson() {}

  @Schema(name = "PairingRequest", description = "a pool of earpieces; its parts add up")
  record Request(
      @Schema(example = "sedge-2") String product,
      @Schema(example = "plain") String tuning,
      @Schema(description = "version; left out: the active one", nullable = true) Integer limitSet,
      @Schema(description = "every unit of the batch that 'which' names", example = "SW-2647")
          String batch,
      @Schema(
              description =
                  "failed-match: units that failed on match or balance; failed: every unit that"
                      + " failed; all",
              example = "failed-match")
          String which,
      @Schema(description = "both earpieces of each unit, by its newest inspection")
          List<String> serials,
      @Schema(description = "both earpieces as measured in each of these inspections")
          List<UUID> inspections,
      @Schema(description = "single earpieces") List<Single> earpieces) {}

  @Schema(name = "SingleEarpiece")
  record Single(String serial, @Schema(description = "left or right") String channel) {}

  @Schema(name = "PairingSummary")
  record Summary(
      UUID id,
      String product,
      String tuning,
      LimitSet limitSet,
      Instant createdAt,
      Pool pool,
      Side asBuilt,
      Side proposed,
      @Schema(description = "proposed less as-built pairs that keep the limits") int gained) {}

  @Schema(name = "Pairing")
  record Pairing(
      UUID id,
      String product,
      String tuning,
      LimitSet limitSet,
      Instant createdAt,
      Request request,
      Pool pool,
      Side asBuilt,
      Side proposed,
      @Schema(description = "proposed less as-built pairs that keep the limits") int gained,
      @Schema(description = "time that costs and assignment took") double seconds,
      @Schema(description = "new pairs first; then pairs that stay as built") List<Pair> pairs,
      List<Earpiece> alone,
      List<LeftOut> leftOut,
      @Schema(
              description =
                  "units that had passed and lose an earpiece: take back their certificates")
          List<String> takeBack,
      List<String> notes,
      Links links) {}

  /**
   * @param guarded true: the limits counted less their guard bands
   */
  @Schema(name = "PairingLimitSet")
  record LimitSet(int version, String digest, boolean guarded) {}

  @Schema(name = "PairingPool", description = "earpieces that may be paired")
  record Pool(int lefts, int rights) {}

  /**
   * @param pairs as built: pairs of which both earpieces are in the pool
   * @param feasible pairs that keep match limits and balance
   * @param totalCost sum over the feasible pairs; 1 is a pair at its limit
   */
  @Schema(name = "PairingSide")
  record Side(int pairs, int feasible, double totalCost, Double meanCost) {}

  @Schema(name = "ProposedPair")
  record Pair(
      int number,
      @Schema(description = "of the new pair: that of the left earpiece's unit") String serial,
      Earpiece left,
      Earpiece right,
      @Schema(description = "true: these two are a pair already") boolean asBuilt,
      @Schema(description = "the largest share of a limit that the pair takes up, 0 to 1")
          double cost,
      Match match,
      Balance balance,
      @Schema(description = "its own inspection since, if there is one", nullable = true)
          Inspected inspected) {}

  @Schema(name = "PairedEarpiece")
  record Earpiece(
      @Schema(description = "the unit that it was inspected in") String serial,
      @Schema(example = "left") String channel,
      @Schema(description = "its own number, or the unit's with .L or .R") String earpiece,
      UUID inspection) {}

  @Schema(name = "PairMatch", description = "where the pair comes nearest to a match limit")
  record Match(double share, Double atHz, Double differenceDb, Double limitDb) {}

  @Schema(name = "PairBalance")
  record Balance(double share, double differenceDb, double limitDb) {}

  @Schema(name = "PairInspected")
  record Inspected(UUID inspection, String verdict, Instant at) {}

  @Schema(name = "EarpieceLeftOut")
  record LeftOut(String serial, String channel, String earpiece, String why, String text) {}

  @Schema(name = "PairingLinks")
  record Links(String self, String csv) {}

  /** Curves of a proposed pair, as those of an inspection. */
  @Schema(name = "ProposedPairCurves")
  record Curves(
      List<Double> frequencyHz,
      String smoothing,
      Channel left,
      Channel right,
      Levels golden,
      Window windows,
      Difference difference,
      List<Region> regions,
      Simulator earSimulator) {}

  @Schema(name = "ProposedPairChannel")
  record Channel(List<Double> levelDb, Double alignmentDb) {}

  @Schema(name = "ProposedPairGolden")
  record Levels(List<Double> levelDb) {}

  @Schema(name = "ProposedPairWindow")
  record Window(List<Double> lowerDb, List<Double> upperDb) {}

  @Schema(name = "ProposedPairDifference")
  record Difference(List<Double> levelDb, List<Double> limitDb) {}

  @Schema(name = "ProposedPairRegion")
  record Region(String name, double fromHz, double toHz) {}

  @Schema(name = "ProposedPairSimulator")
  record Simulator(String type, double specifiedFromHz, double specifiedToHz) {}
}
