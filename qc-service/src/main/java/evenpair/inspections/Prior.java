package evenpair.inspections;

import evenpair.tolerance.Reason;
import java.util.List;

/**
 * What an inspection has seen before the attempt at hand.
 *
 * @param valid its valid seatings, in order
 * @param unseated why each of its bad mountings was one, in order
 */
record Prior(List<StoredPair> valid, List<List<Reason>> unseated) {
  static final Prior NOTHING = new Prior(List.of(), List.of());

  Prior {
    valid = List.copyOf(valid);
    unseated = List.copyOf(unseated);
  }

  List<Reason> reseats() {
    return unseated.stream().flatMap(List::stream).toList();
  }
}
