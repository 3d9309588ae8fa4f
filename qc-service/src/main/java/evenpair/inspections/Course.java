package evenpair.inspections;

import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.Judgement;
import evenpair.tolerance.Reason;
import evenpair.tolerance.ReasonKind;
import evenpair.tolerance.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What an attempt means for its inspection.
 *
 * @param outcome what the attempt itself came to
 * @param valid whether its curves take part in the mean
 * @param flaws why it is INVALID or RESEAT; empty otherwise
 * @param closing the judgement that closes the inspection, if it does
 */
record Course(Outcome outcome, boolean valid, List<Reason> flaws, Optional<Judgement> closing) {
  /**
   * Each seating must hold by itself before it takes part; then all valid ones are judged together. From the stored floats
   * only, so that judging them again gives the same.
   *
   * @param earlier the valid seatings before this one, in order
   * @param triesBefore mountings before this one
   */
  static Course of(Levelling.Levelled attempt, List<StoredPair> earlier, int triesBefore, StoredLimitSet limits) {
    if (attempt.curves().isEmpty() || !attempt.flaws().isEmpty()) {
      return invalid(attempt.flaws());
    }
    StoredPair pair = attempt.curves().get();
    Judgement own = judge(List.of(pair), limits);
    if (own.verdict() == Verdict.RESEAT) {
      return unseated(own, triesBefore + 1 >= limits.set().seating().tries());
    }
    List<Reason> noise = NoiseCheck.reasons(pair, limits);
    if (own.verdict() == Verdict.INVALID || !noise.isEmpty()) {
      List<Reason> flaws = new ArrayList<>(own.verdict() == Verdict.INVALID ? own.reasons() : List.of());
      flaws.addAll(noise);
      return invalid(flaws);
    }
    List<StoredPair> all = new ArrayList<>(earlier);
    all.add(pair);
    return all.size() < limits.set().seating().count()
        ? new Course(Outcome.VALID, true, List.of(), Optional.empty())
        : closed(all.size() == 1 ? own : judge(all, limits));
  }

  /** The one way from stored floats to a judgement: ingest, look-up and re-judging all come through here. */
  static Judgement judge(List<StoredPair> seatings, StoredLimitSet limits) {
    return limits.judge().judge(Combination.of(seatings));
  }

  private static Course invalid(List<Reason> flaws) {
    return new Course(Outcome.INVALID, false, flaws, Optional.empty());
  }

  private static Course closed(Judgement judgement) {
    return switch (judgement.verdict()) {
      case PASS -> new Course(Outcome.PASS, true, List.of(), Optional.of(judgement));
      case FAIL -> new Course(Outcome.FAIL, true, List.of(), Optional.of(judgement));
      case RESEAT -> new Course(Outcome.RESEAT, false, judgement.reasons(), Optional.empty());
      case INVALID -> invalid(judgement.reasons());
    };
  }

  /** A unit that never sealed in all its tries fails without margins; its curves stay out of every statistic. */
  private static Course unseated(Judgement own, boolean lastTry) {
    if (!lastTry) {
      return new Course(Outcome.RESEAT, false, own.reasons(), Optional.empty());
    }
    List<Reason> seal =
        own.reasons().stream()
            .map(reason -> Reason.of(ReasonKind.SEAL, reason.channel(), null, null))
            .distinct()
            .toList();
    Judgement failed = new Judgement(Verdict.FAIL, seal, List.of(), null, null);
    return new Course(Outcome.FAIL, false, own.reasons(), Optional.of(failed));
  }
}
