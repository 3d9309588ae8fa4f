package evenpair.tolerance;

import evenpair.tolerance.Findings.Rank;
import java.util.Optional;

/**
 * A-weighted idle noise of each earpiece at or below its limit. A limit within 3 dB of the
 * station's own floor is not judged: an earpiece as noisy as allowed could not be told from a
 * silent one (common practice). Decided simply.
 */
final class IdleNoiseCheck implements Check {
  private static final double LIMIT_ABOVE_FLOOR_DB = 3;

  private final double limitDba;

  IdleNoiseCheck(double limitDba) {
    this.limitDba = limitDba;
  }

  @Override
  public void look(JudgedPair pair, Findings findings) {
    for (Channel channel : Channel.values()) {
      Optional<MeasuredIdleNoise> noise = pair.measured().of(channel).idleNoise();
      if (noise.isEmpty()) {
        findings.result(RegionResult.notJudged(ReasonKind.IDLE_NOISE, null, channel));
        findings.blocked(Reason.notJudged("idle-noise", channel, null));
      } else if (!(limitDba - noise.get().floorDba() >= LIMIT_ABOVE_FLOOR_DB)) {
        findings.result(RegionResult.notJudged(ReasonKind.IDLE_NOISE, null, channel));
        findings.undecided(Reason.notJudged(inTheWay(noise.get()), channel, null));
      } else {
        look(noise.get(), channel, findings);
      }
    }
  }

  private static String inTheWay(MeasuredIdleNoise noise) {
    return Double.isNaN(noise.floorDba()) ? "idle-noise-station" : "idle-noise-floor";
  }

  private void look(MeasuredIdleNoise noise, Channel channel, Findings findings) {
    double scale = Math.max(1, Math.abs(limitDba));
    Margin margin = Margin.below(Margin.NO_PLACE, noise.dba(), limitDba, scale);
    findings.result(margin.resultIn(RegionResult.DBA, ReasonKind.IDLE_NOISE, null, channel));
    if (margin.db() < 0) {
      Reason reason = margin.reason(ReasonKind.IDLE_NOISE, null, channel);
      findings.failure(reason.withUsbLines(noise.usbFrameLines()), Rank.REST, margin.severity());
    }
  }
}
