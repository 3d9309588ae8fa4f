package evenpair.inspections;

import evenpair.products.Products.StoredLimitSet;
import evenpair.stations.Stations;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Judgement;
import evenpair.web.Refusal;
import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Component;

/**
 * Computes a closed inspection again from its stored captures under its recorded versions: the
 * calibrations and the correction that its attempts name, its limit set, and what its verdict
 * rested on. The same software gives the same bits; another version may differ by rounding.
 */
@Component
class Rejudge {
  /** What another version of the software may differ by without being reported. */
  static final double TOLERANCE_DB = 0.001;

  private final InspectionFiles files;
  private final KeptCaptures captures;
  private final Hearing hearing;
  private final Stations stations;
  private final InspectionSettings settings;

  Rejudge(
      InspectionFiles files,
      KeptCaptures captures,
      Hearing hearing,
      Stations stations,
      InspectionSettings settings) {
    this.files = files;
    this.captures = captures;
    this.hearing = hearing;
    this.stations = stations;
    this.settings = settings;
  }

  /**
   * @param largestDb largest difference of a stored level, dB; null if nothing could be compared
   * @param verdictNow null if it could not be judged
   * @param problem what kept it from being judged; null if nothing did
   */
  record Outcome(
      boolean bitForBit, Double largestDb, String verdictThen, String verdictNow, String problem) {
    /**
     * To be reported: a difference above {@value #TOLERANCE_DB} dB, another verdict, or a problem.
     */
    boolean differs() {
      return problem != null
          || largestDb == null
          || !(largestDb <= TOLERANCE_DB)
          || !verdictThen.equals(verdictNow);
    }
  }

  /**
   * To be called in a transaction.
   *
   * @param file of a closed inspection
   */
  Outcome again(InspectionFile file) {
    String then = file.verdict().orElseThrow().verdict().name();
    List<AttemptRow> valid = file.attempts().stream().filter(AttemptRow::valid).toList();
    if (valid.isEmpty()) {
      return new Outcome(true, 0.0, then, then, null); // it never sealed: nothing was measured
    }
    List<StoredPair> stored = files.validSeatings(file.row().id());
    List<StoredPair> now = new ArrayList<>();
    Judging judging = files.judging(file.row());
    Recomputed difference = Recomputed.NOTHING;
    for (int i = 0; i < valid.size(); i++) {
      try {
        StoredPair again = measured(valid.get(i), stored.get(i), judging.limits());
        difference = difference.and(Recomputed.between(stored.get(i), again));
        now.add(again);
      } catch (IOException | Refusal | NotComputed e) {
        return new Outcome(false, null, then, null, problem(valid.get(i), e));
      }
    }
    Judgement judgement = judging.judge(now);
    boolean sameReasons =
        RecordJson.write(judgement.reasons())
            .equals(RecordJson.write(RecordJson.read(file.verdict().get().reasons())));
    double largest = difference.largestDb();
    return new Outcome(
        difference.bitForBit() && sameReasons,
        largest,
        then,
        judgement.verdict().name(),
        Double.isFinite(largest) ? null : "points are there that were not, or the other way round");
  }

  private static String problem(AttemptRow attempt, Exception e) {
    return "attempt " + attempt.number() + ": " + e.getMessage();
  }

  /** What was computed once cannot be computed now. */
  private static final class NotComputed extends Exception {
    private static final long serialVersionUID = 1L;

    NotComputed(String message) {
      super(message);
    }
  }

  private StoredPair measured(AttemptRow attempt, StoredPair stored, StoredLimitSet limits)
      throws IOException, NotComputed {
    HeardPair heard =
        hearing.hear(
            captures.read(attempt), Optional.ofNullable(attempt.circumstances().stimulus()));
    Levelling.Levelled levelled =
        Levelling.level(
            heard, surroundings(attempt, stored), limits.set(), settings.driveToleranceDb());
    return levelled
        .curves()
        .orElseThrow(
            () -> new NotComputed("is not accepted any more: " + levelled.flaws().get(0).kind()));
  }

  private Surroundings surroundings(AttemptRow attempt, StoredPair stored) throws NotComputed {
    AttemptRow.Circumstances with = attempt.circumstances();
    AttemptRow.Chain named = attempt.chain();
    Stations.Chain chain =
        stations
            .chainOf(
                with.station(),
                named.leftMicrophoneId(),
                named.rightMicrophoneId(),
                named.outputId(),
                named.correctionId())
            .orElseThrow(() -> new NotComputed("a calibration that it names is not on record"));
    Map<Channel, Double> floors = new EnumMap<>(Channel.class);
    for (Channel channel : Channel.values()) {
      StoredIdle idle = stored.of(channel).idle();
      if (idle != null && idle.floorDba() != null) {
        floors.put(channel, idle.floorDba());
      }
    }
    return new Surroundings(chain, with.measuredAt(), Optional.empty(), floors);
  }
}
