package evenpair.tolerance;

import evenpair.acoustics.Grid;
import java.util.List;
import java.util.Optional;

/**
 * Whether a guarded set can be decided at all: it needs the station's uncertainty wherever it
 * judges, and guard bands that leave something to pass.
 */
final class GuardCheck implements Check {
  private final LimitSet.LevelLimit level;
  private final List<RegionLimits> regions;

  GuardCheck(LimitSet.LevelLimit level, List<RegionLimits> regions) {
    this.level = level;
    this.regions = regions;
  }

  @Override
  public void look(JudgedPair pair, Findings findings) {
    Guard guard = pair.guard();
    if (!guard.applies()) {
      findings.blocked(Reason.of(ReasonKind.UNCERTAINTY_MISSING, null, null, null));
      return;
    }
    double halfWidth = (level.highest() - level.lowest()) / 2;
    requireRoom(Margin.below(Margin.NO_PLACE, guard.offset(), halfWidth, 1), findings);
    requireRoom(Margin.below(Margin.NO_PLACE, guard.balance(), level.balanceDb(), 1), findings);
    regions.forEach(limits -> look(limits, guard, findings));
  }

  private static void requireRoom(Margin room, Findings findings) {
    if (room.db() < 0) {
      findings.blocked(Reason.of(ReasonKind.GUARD_TOO_WIDE, null, room.value(), room.limit()));
    }
  }

  private static void look(RegionLimits limits, Guard guard, Findings findings) {
    Optional<Integer> gap = limits.firstUnguarded(guard);
    if (gap.isEmpty()) {
      limits
          .guardedAway(guard)
          .map(room -> room.reason(ReasonKind.GUARD_TOO_WIDE, limits.name(), null))
          .ifPresent(findings::blocked);
    } else if (limits.region().required()) {
      findings.blocked(
          new Reason(
              ReasonKind.UNCERTAINTY_MISSING,
              null,
              limits.name(),
              Grid.hz(gap.get()),
              null,
              null,
              List.of()));
    }
  }
}
