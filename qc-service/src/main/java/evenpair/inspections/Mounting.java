package evenpair.inspections;

import evenpair.tolerance.MeasuredPair;
import evenpair.tolerance.Reason;
import evenpair.tolerance.SeatingCheck;
import evenpair.tolerance.SeatingSuspicion;
import java.util.List;

/**
 * Whether a pair sits well on the simulators, and what follows if it does not.
 *
 * @param suspicions empty if it does
 * @param sealed what remains on every one of the allowed tries; empty while there is hope
 */
record Mounting(List<SeatingSuspicion> suspicions, List<SeatingSuspicion> sealed) {
  static Mounting of(StoredPair pair, Prior prior, Judging judging) {
    SeatingCheck check = SeatingCheck.of(judging.set(), judging.limits().golden());
    MeasuredPair measured = new MeasuredPair(pair.left().measured(), pair.right().measured());
    return of(check.examine(measured, prior.reseats()), prior, judging.set().seating().tries());
  }

  /**
   * A unit has never sealed when its last {@code tries} mountings were all bad for the same cause
   * on the same earpiece. Causes that change from try to try are the mounting's, not the unit's.
   */
  static Mounting of(List<SeatingSuspicion> suspicions, Prior prior, int tries) {
    int before = tries - 1;
    boolean used = prior.valid().isEmpty() && prior.unseated().size() >= before;
    List<List<Reason>> last =
        used
            ? prior.unseated().subList(prior.unseated().size() - before, prior.unseated().size())
            : List.of();
    List<SeatingSuspicion> always =
        suspicions.stream()
            .filter(now -> last.stream().allMatch(then -> holds(then, now)))
            .toList();
    return new Mounting(suspicions, used ? always : List.of());
  }

  private static boolean holds(List<Reason> then, SeatingSuspicion now) {
    return then.stream().anyMatch(s -> s.kind() == now.kind() && s.channel() == now.channel());
  }

  List<Reason> reasons() {
    return suspicions.stream().map(SeatingSuspicion::reason).toList();
  }

  boolean good() {
    return suspicions.isEmpty();
  }
}
