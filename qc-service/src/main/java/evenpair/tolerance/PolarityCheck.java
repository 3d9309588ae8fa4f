package evenpair.tolerance;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Polarity;
import evenpair.tolerance.Findings.Rank;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Both sides the right way round: the sign of the largest cross-correlation with the golden
 * response in 100 Hz–1 kHz. A golden response without phase leaves only left against right. |r|
 * &lt; 0.5 decides nothing (common practice).
 *
 * <p>A pair whose polarity stays undecided cannot pass. It still fails by its other checks: a dead
 * driver, whose phase is noise, must not be measured again for ever.
 */
final class PolarityCheck implements Check {
  private static final Band BAND = new Band(100, 1000);
  private static final double DECISIVE = 0.5;

  private final GoldenResponse golden;

  PolarityCheck(GoldenResponse golden) {
    this.golden = golden;
  }

  @Override
  public void look(JudgedPair pair, Findings findings) {
    MeasuredPair measured = pair.measured();
    if (golden.phaseDeg().isEmpty()) {
      note(correlation(measured.left(), measured.right()), null, findings);
      return;
    }
    MeasuredChannel asGolden = new MeasuredChannel(golden.level(), golden.phaseDeg());
    for (Channel channel : Channel.values()) {
      note(correlation(measured.of(channel), asGolden), channel, findings);
    }
  }

  private static void note(OptionalDouble r, Channel channel, Findings findings) {
    boolean decided = r.isPresent() && Math.abs(r.getAsDouble()) >= DECISIVE;
    RegionResult row =
        new RegionResult(ReasonKind.POLARITY, null, channel, decided, null, null, null, null);
    boolean reversed = decided && r.getAsDouble() < 0;
    findings.result(reversed ? row.in(CheckState.FAIL) : row);
    if (!decided) {
      findings.undecided(Reason.notJudged("polarity"));
    } else if (reversed) {
      findings.failure(
          Reason.of(ReasonKind.POLARITY, channel, null, null), Rank.POLARITY, -r.getAsDouble());
    }
  }

  private static OptionalDouble correlation(MeasuredChannel a, MeasuredChannel b) {
    Optional<double[]> phaseA = a.phaseDeg().filter(phase -> whole(a.level(), phase));
    Optional<double[]> phaseB = b.phaseDeg().filter(phase -> whole(b.level(), phase));
    if (phaseA.isEmpty() || phaseB.isEmpty()) {
      return OptionalDouble.empty();
    }
    double r = Polarity.correlation(a.level(), phaseA.get(), b.level(), phaseB.get(), BAND);
    return Double.isFinite(r) ? OptionalDouble.of(r) : OptionalDouble.empty();
  }

  private static boolean whole(Curve level, double[] phaseDeg) {
    double[] inside = Arrays.copyOfRange(phaseDeg, BAND.firstIndex(), BAND.lastIndex() + 1);
    return level.covers(BAND) && Arrays.stream(inside).allMatch(Double::isFinite);
  }
}
