package evenpair.inspections;

import evenpair.acoustics.Curve;
import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.Judgement;
import evenpair.tolerance.Reason;
import evenpair.tolerance.Uncertainty;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * Closed inspections as they were recorded, and the same stored floats judged once more: by their
 * own set, or by any other. Judging goes the way that it went when they were recorded.
 */
public interface RecordedUnits {
  /**
   * @return the closed inspections that answer to the question, in production order (first
   *     attempt's measurement time); without curves
   */
  List<RecordedUnit> find(Which which);

  /**
   * @return a number that is another one as soon as one more inspection answers to the question:
   *     nothing closed ever changes, so that their count tells
   */
  long count(Which which);

  /**
   * Hands over the levels of the inspections that have valid seatings: unsmoothed, the mean of the
   * seatings as judging combines them, NaN where absent. In the order of inspections, one at a
   * time.
   */
  void levels(Which which, LevelTaker taker);

  /** Takes one inspection's levels. */
  interface LevelTaker {
    void take(UUID inspection, Curve left, Curve right);
  }

  /**
   * Judges by the very set, uncertainty and other tunings that judged when they were recorded.
   *
   * @return by inspection; one that never sealed keeps its recorded verdict, since it has no curves
   */
  Map<UUID, Judgement> again(Collection<RecordedUnit> units);

  /**
   * Judges by another set, as if it had judged then: with the same other tunings to compare with.
   *
   * @param set for the same product, tuning, ear simulator and drive
   * @param worth what each measurement is worth; asked for a guarded set only
   * @return by inspection; one that never sealed keeps its recorded verdict
   */
  Map<UUID, Judgement> by(StoredLimitSet set, Collection<RecordedUnit> units, Worth worth);

  /** What the measurement of one unit is worth. */
  interface Worth {
    /**
     * @return empty if that is not known: a guarded set then gives no verdict
     */
    Optional<Uncertainty> of(RecordedUnit unit);
  }

  /**
   * Which inspections.
   *
   * @param batches any of these; every batch if empty
   * @param stations any of these; every station if empty
   * @param from first instant of the first attempt; null for the beginning
   * @param to first instant that is too late; null for no end
   * @param limitSet version that judged; null for every one
   */
  record Which(
      String product,
      String tuning,
      Set<String> batches,
      Set<String> stations,
      Instant from,
      Instant to,
      Integer limitSet) {
    public Which {
      batches = Set.copyOf(batches);
      stations = Set.copyOf(stations);
    }
  }

  /**
   * One closed inspection.
   *
   * @param verdict PASS or FAIL
   * @param conditional by a guarded rule a result lies inside the guard band
   * @param limitSetId the set that judged
   * @param measured false: it never sealed, and there is no curve to judge again
   * @param reasons why it failed, the first one first; empty for a pass
   * @param undecided true: a check beside level, balance, windows and match came to no result, so
   *     that it could not have passed
   * @param uncertainty what the measurement was worth, if a guarded set judged; units alike share
   *     one object
   */
  record RecordedUnit(
      UUID inspection,
      String serial,
      String batch,
      String station,
      String occasion,
      Instant at,
      String verdict,
      boolean conditional,
      UUID limitSetId,
      boolean measured,
      List<Reason> reasons,
      boolean undecided,
      Optional<Uncertainty> uncertainty) {}
}
