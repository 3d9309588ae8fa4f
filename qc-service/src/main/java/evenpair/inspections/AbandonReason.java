package evenpair.inspections;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Why an inspection ended without a verdict. A choice, not free text: the record is sealed. */
enum AbandonReason {
  /** Another unit than the serial number says was on the simulators. */
  WRONG_UNIT,
  UNIT_DAMAGED,
  STATION_FAULT,
  /** The unit was taken off the line. */
  WITHDRAWN,
  /** Set by the service itself when no attempt came for the set time. */
  TIMED_OUT;

  String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * @return the reason that a person may give under this word
   */
  static Optional<AbandonReason> givenByAPerson(String word) {
    return Arrays.stream(values()).filter(r -> r != TIMED_OUT && r.word().equals(word)).findFirst();
  }

  static List<String> wordsForPeople() {
    return Arrays.stream(values()).filter(r -> r != TIMED_OUT).map(AbandonReason::word).toList();
  }
}
