package evenpair.tolerance;

import java.util.ArrayList;
import java.util.List;

/**
 * What a set asks for and nothing here can check. A limit that is not checked must not look like
 * one that is kept, so each makes the judgement INVALID and names itself. A check that is added
 * takes its line out of {@link #asked}.
 */
final class UnmadeChecks implements Check {
  private final List<Unmade> unmade;

  private record Unmade(ReasonKind check, String word) {}

  UnmadeChecks(LimitSet set) {
    this.unmade = asked(set);
  }

  private static List<Unmade> asked(LimitSet set) {
    List<Unmade> asked = new ArrayList<>();
    if (!set.distortion().isEmpty()) {
      asked.add(new Unmade(ReasonKind.THD, "distortion"));
    }
    if (set.idleNoiseDba().isPresent()) {
      asked.add(new Unmade(ReasonKind.IDLE_NOISE, "idle-noise"));
    }
    if (set.decision().guarded()) {
      asked.add(new Unmade(ReasonKind.NOT_JUDGED, "guarded-decision"));
    }
    return List.copyOf(asked);
  }

  @Override
  public void look(JudgedPair pair, Findings findings) {
    for (Unmade check : unmade) {
      findings.result(RegionResult.notJudged(check.check(), null, null));
      findings.blocked(Reason.notJudged(check.word()));
    }
  }
}
