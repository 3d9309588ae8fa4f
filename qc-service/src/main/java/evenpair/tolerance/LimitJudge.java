package evenpair.tolerance;

import evenpair.acoustics.Curve;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Judges by the set's decision rule: each check of the set in turn, then the ranking of what they
 * found.
 */
final class LimitJudge implements Judge {
  private final LimitSet set;
  private final Curve golden;
  private final List<Check> checks;

  LimitJudge(LimitSet set, GoldenResponse golden) {
    this.set = set;
    this.golden = set.smoothing().apply(golden.level());
    this.checks = checks(set, golden);
  }

  private static List<Check> checks(LimitSet set, GoldenResponse golden) {
    List<RegionLimits> regions = set.regions().stream().map(RegionLimits::new).toList();
    List<Check> checks = new ArrayList<>();
    if (set.decision().guarded()) {
      checks.add(new GuardCheck(set.level(), regions));
    }
    if (set.polaritySame()) {
      checks.add(new PolarityCheck(golden, set.polarity()));
    }
    checks.add(new DataCheck(set.level().band(), regions));
    checks.add(new LevelAndMatchCheck(set.level(), regions));
    checks.add(new WindowCheck(set.level().band(), regions));
    set.distortion().forEach(limit -> checks.add(new DistortionCheck(limit)));
    set.idleNoiseDba().ifPresent(dba -> checks.add(new IdleNoiseCheck(dba)));
    return List.copyOf(checks);
  }

  @Override
  public Judgement judge(MeasuredPair measured, Optional<Uncertainty> uncertainty) {
    Guard guard = new Guard(set.decision(), uncertainty);
    JudgedPair pair = new JudgedPair(measured, guard, golden, set.smoothing(), set.level().band());
    Findings findings = new Findings();
    checks.forEach(check -> check.look(pair, findings));
    boolean undecidable = set.decision().guarded() && !guard.applies();
    return undecidable ? findings.undecidable(pair) : findings.judgement(pair);
  }
}
