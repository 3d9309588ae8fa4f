package evenpair.batches;

import evenpair.inspections.RecordedUnits.RecordedUnit;
import evenpair.tolerance.PairTable;
import evenpair.tolerance.ReasonKind;
import evenpair.tolerance.Uncertainty;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Recorded units ready for any number of trials: each serial once, by its first closed inspection
 * of those asked for, because later rework, audits and returns say nothing of how the line made it.
 *
 * @param units in production order
 * @param row of each unit in the table; −1 for a unit that never sealed
 * @param groups what the table's groups have in common
 * @param further inspections of the same serials that were left out
 */
record TrialUnits(
    List<RecordedUnit> units, int[] row, PairTable table, List<Group> groups, int further) {
  /** Reasons that no limit on level or match has a part in. */
  private static final Set<ReasonKind> OTHER_CHECKS =
      EnumSet.of(
          ReasonKind.POLARITY,
          ReasonKind.POLARITY_BAND,
          ReasonKind.THD,
          ReasonKind.HIGH_ORDER_DISTORTION,
          ReasonKind.IDLE_NOISE);

  /**
   * Pairs whose measurement is worth the same.
   *
   * @param recorded the uncertainty that judged them; empty under simple acceptance
   */
  record Group(String station, Optional<Uncertainty> recorded) {}

  TrialUnits {
    units = List.copyOf(units);
    groups = List.copyOf(groups);
  }

  /**
   * @return the unit of each row of the table
   */
  int[] unitOfRow() {
    int[] unit = new int[table.rows()];
    for (int u = 0; u < row.length; u++) {
      if (row[u] >= 0) {
        unit[row[u]] = u;
      }
    }
    return unit;
  }

  /**
   * @return those that have curves
   */
  List<RecordedUnit> drawn() {
    return Arrays.stream(unitOfRow()).mapToObj(units::get).toList();
  }

  /**
   * @return true if a check beside level, balance, windows and match failed it when it was recorded
   */
  static boolean failsOtherwise(RecordedUnit unit) {
    return unit.reasons().stream().anyMatch(reason -> OTHER_CHECKS.contains(reason.kind()));
  }

  /**
   * @return true if it sounded like another tuning when it was recorded
   */
  static boolean playsOtherTuning(RecordedUnit unit) {
    return unit.reasons().stream().anyMatch(reason -> reason.kind() == ReasonKind.OTHER_TUNING);
  }
}
