package evenpair.inspections;

import evenpair.products.Products.Tuning;
import evenpair.tolerance.Reason;
import evenpair.tolerance.ReasonKind;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What is wrong with one tuning of a unit that is inspected tuning by tuning.
 *
 * @param soundsLike the tuning that was heard or whose recordings came again; null if nothing was
 *     heard
 */
record TuningProblem(Kind kind, String soundsLike) {
  enum Kind {
    /** Required, and without a verdict. */
    MISSING,
    /** What was heard is another tuning. */
    WRONG,
    /**
     * What was heard is another tuning that has been heard under its own name too: one was sent
     * twice.
     */
    DOUBLED;

    String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /**
   * @param ofUnit every inspection of the unit
   * @param occasion the one that the unit's verdict is about
   */
  static Optional<TuningProblem> of(Tuning tuning, Occasion occasion, List<InspectionFile> ofUnit) {
    Optional<InspectionFile> newest = newest(tuning.key(), occasion, ofUnit);
    Optional<TuningProblem> named = newest.flatMap(file -> named(file, occasion, ofUnit));
    boolean judged = newest.isPresent() && newest.get().row().state() == InspectionState.CLOSED;
    return named.isEmpty() && tuning.required() && !judged
        ? Optional.of(new TuningProblem(Kind.MISSING, null))
        : named;
  }

  private static Optional<TuningProblem> named(
      InspectionFile file, Occasion occasion, List<InspectionFile> ofUnit) {
    for (Reason reason : file.reasons()) {
      if (reason.kind() == ReasonKind.DOUBLED_TUNING) {
        return Optional.of(new TuningProblem(Kind.DOUBLED, reason.otherTuning()));
      }
      if (reason.kind() == ReasonKind.OTHER_TUNING) {
        boolean own = heardAsItself(reason.otherTuning(), occasion, ofUnit);
        return Optional.of(
            new TuningProblem(own ? Kind.DOUBLED : Kind.WRONG, reason.otherTuning()));
      }
    }
    return Optional.empty();
  }

  private static boolean heardAsItself(
      String tuning, Occasion occasion, List<InspectionFile> ofUnit) {
    return newest(tuning, occasion, ofUnit)
        .filter(file -> file.row().state() == InspectionState.CLOSED)
        .filter(
            file ->
                file.reasons().stream()
                    .noneMatch(reason -> reason.kind() == ReasonKind.OTHER_TUNING))
        .isPresent();
  }

  private static Optional<InspectionFile> newest(
      String tuning, Occasion occasion, List<InspectionFile> ofUnit) {
    return ofUnit.stream()
        .filter(file -> file.row().tuning().equals(tuning) && file.row().occasion() == occasion)
        .filter(file -> file.row().state() != InspectionState.ABANDONED)
        .max(Comparator.comparing(file -> file.row().id()));
  }
}
