package evenpair.inspections;

import evenpair.tolerance.Judgement;
import evenpair.tolerance.Reason;
import evenpair.tolerance.SeatingSuspicion;
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
 * @param closing what closes the inspection, if it does
 */
record Course(Outcome outcome, boolean valid, List<Reason> flaws, Optional<Closing> closing) {
  /**
   * @param judgement final
   * @param seatings the valid seatings it was made of; empty if the unit never sealed
   */
  record Closing(Judgement judgement, List<StoredPair> seatings) {}

  /**
   * Each seating must hold by itself before it takes part: first its mounting, because a leak looks
   * noisy too, then noise and data; then all valid ones are judged together. From the stored floats
   * only, so that judging them again gives the same.
   */
  static Course of(Levelling.Levelled attempt, Prior prior, Judging judging) {
    if (attempt.curves().isEmpty() || !attempt.flaws().isEmpty()) {
      return invalid(attempt.flaws());
    }
    StoredPair pair = attempt.curves().get();
    Mounting mounting = Mounting.of(pair, prior, judging);
    if (!mounting.good()) {
      return unseated(mounting);
    }
    Judgement own = judging.judge(List.of(pair));
    List<Reason> flaws =
        new ArrayList<>(own.verdict() == Verdict.INVALID ? own.reasons() : List.of());
    flaws.addAll(NoiseCheck.reasons(pair, judging.limits()));
    if (!flaws.isEmpty()) {
      return invalid(flaws);
    }
    List<StoredPair> all = new ArrayList<>(prior.valid());
    all.add(pair);
    if (all.size() < judging.set().seating().count()) {
      return new Course(Outcome.VALID, true, List.of(), Optional.empty());
    }
    return closed(all.size() == 1 ? own : judging.judge(all), all);
  }

  private static Course invalid(List<Reason> flaws) {
    return new Course(Outcome.INVALID, false, flaws, Optional.empty());
  }

  private static Course closed(Judgement judgement, List<StoredPair> seatings) {
    return switch (judgement.verdict()) {
      case PASS ->
          new Course(Outcome.PASS, true, List.of(), Optional.of(new Closing(judgement, seatings)));
      case FAIL ->
          new Course(Outcome.FAIL, true, List.of(), Optional.of(new Closing(judgement, seatings)));
      case RESEAT, INVALID -> invalid(judgement.reasons());
    };
  }

  /**
   * A unit that never sealed in all its tries fails without margins; its curves stay out of every
   * statistic.
   */
  private static Course unseated(Mounting mounting) {
    if (mounting.sealed().isEmpty()) {
      return new Course(Outcome.RESEAT, false, mounting.reasons(), Optional.empty());
    }
    List<Reason> seal = mounting.sealed().stream().map(SeatingSuspicion::seal).distinct().toList();
    Judgement failed = new Judgement(Verdict.FAIL, seal, List.of(), null, null);
    return new Course(
        Outcome.FAIL, false, mounting.reasons(), Optional.of(new Closing(failed, List.of())));
  }
}
