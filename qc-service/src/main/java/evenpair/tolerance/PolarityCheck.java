package evenpair.tolerance;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Polarity;
import evenpair.tolerance.Findings.Rank;
import evenpair.tolerance.LimitSet.PolarityRule;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Both sides the right way round: the sign of the largest cross-correlation with the golden
 * response in 100 Hz–1 kHz, and in the further bands of the set, where a side that is right as a
 * whole may have one driver reversed. A golden response without phase leaves only left against
 * right. |r| &lt; 0.5 decides nothing (common practice).
 *
 * <p>A pair whose polarity stays undecided cannot pass, unless the set does not require it. It
 * still fails by its other checks: a dead driver, whose phase is noise, must not be measured again
 * for ever.
 */
final class PolarityCheck implements Check {
  private static final Band BAND = new Band(100, 1000);
  private static final double DECISIVE = 0.5;

  private final GoldenResponse golden;
  private final PolarityRule rule;

  PolarityCheck(GoldenResponse golden, PolarityRule rule) {
    this.golden = golden;
    this.rule = rule;
  }

  @Override
  public void look(JudgedPair pair, Findings findings) {
    MeasuredPair measured = pair.measured();
    if (golden.phaseDeg().isEmpty()) {
      look(measured.left(), measured.right(), null, findings);
      return;
    }
    MeasuredChannel asGolden = new MeasuredChannel(golden.level(), golden.phaseDeg());
    for (Channel channel : Channel.values()) {
      look(measured.of(channel), asGolden, channel, findings);
    }
  }

  private void look(MeasuredChannel a, MeasuredChannel b, Channel channel, Findings findings) {
    OptionalDouble whole = correlation(a, b, BAND);
    note(whole, ReasonKind.POLARITY, null, channel, findings);
    boolean reversed = decided(whole) && whole.getAsDouble() < 0;
    if (!reversed) {
      // reversed as a whole, its drivers are reversed too: one reason says it
      for (Band band : rule.bands()) {
        note(correlation(a, b, band), ReasonKind.POLARITY_BAND, name(band), channel, findings);
      }
    }
  }

  private static boolean decided(OptionalDouble r) {
    return r.isPresent() && Math.abs(r.getAsDouble()) >= DECISIVE;
  }

  private static String name(Band band) {
    return Math.round(band.fromHz()) + "–" + Math.round(band.toHz()) + " Hz";
  }

  private void note(
      OptionalDouble r, ReasonKind kind, String band, Channel channel, Findings findings) {
    boolean decided = decided(r);
    RegionResult row = new RegionResult(kind, band, channel, decided, null, null, null, null);
    boolean reversed = decided && r.getAsDouble() < 0;
    findings.result(reversed ? row.in(CheckState.FAIL) : row);
    if (reversed) {
      Reason reason = new Reason(kind, channel, band, null, null, null, List.of());
      findings.failure(reason, Rank.POLARITY, -r.getAsDouble());
    } else if (!decided && rule.required()) {
      findings.undecided(Reason.notJudged("polarity"));
    }
  }

  private static OptionalDouble correlation(MeasuredChannel a, MeasuredChannel b, Band band) {
    Optional<double[]> phaseA = a.phaseDeg().filter(phase -> whole(a.level(), phase, band));
    Optional<double[]> phaseB = b.phaseDeg().filter(phase -> whole(b.level(), phase, band));
    if (phaseA.isEmpty() || phaseB.isEmpty()) {
      return OptionalDouble.empty();
    }
    double r = Polarity.correlation(a.level(), phaseA.get(), b.level(), phaseB.get(), band);
    return Double.isFinite(r) ? OptionalDouble.of(r) : OptionalDouble.empty();
  }

  private static boolean whole(Curve level, double[] phaseDeg, Band band) {
    double[] inside = Arrays.copyOfRange(phaseDeg, band.firstIndex(), band.lastIndex() + 1);
    return level.covers(band) && Arrays.stream(inside).allMatch(Double::isFinite);
  }
}
