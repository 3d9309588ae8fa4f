package evenpair.inspections;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Response;
import evenpair.captures.CurveFile;
import evenpair.stations.Stations.Chain;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Drive;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Reason;
import evenpair.tolerance.ReasonKind;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** From responses re full scale to sound pressure levels as stored. Pure. */
final class Levelling {
  private static final double REFERENCE_PASCAL = 20e-6;

  private Levelling() {}

  /**
   * @param curves empty if a level cannot be given
   * @param flaws why the attempt cannot be judged; empty if it can
   */
  record Levelled(Optional<StoredPair> curves, List<Reason> flaws) {}

  /**
   * L = 20·lg(|H|·d/√2·P/20 µPa), H the response in FS/FS, d the digital peak that gives the set's drive, P pascal per full
   * scale. Then the station's own left−right difference s is taken out: L_left − s/2, L_right + s/2.
   *
   * @param driveToleranceDb how far the stimulus' own peak may lie from d; within it the level is scaled as linear
   */
  static Levelled level(HeardPair heard, Chain chain, LimitSet set, Instant measuredAt, double driveToleranceDb) {
    List<Reason> flaws = new ArrayList<>(heard.flaws());
    List<Reason> chainProblems = ChainCheck.problems(chain, set, heard.stimulus().isPresent(), measuredAt);
    flaws.addAll(chainProblems);
    if (!heard.flaws().isEmpty() || !chainProblems.isEmpty()) {
      return new Levelled(Optional.empty(), flaws);
    }
    if (heard.stimulus().isPresent()) {
      double played = decibels(heard.stimulus().get().sweep().amplitude());
      double wanted = decibels(digitalPeak(set.drive(), chain));
      if (Math.abs(played - wanted) > driveToleranceDb) {
        return new Levelled(Optional.empty(), List.of(Reason.of(ReasonKind.WRONG_DRIVE, null, played, wanted)));
      }
    }
    StoredPair pair =
        new StoredPair(stored(Channel.LEFT, heard, chain, set), stored(Channel.RIGHT, heard, chain, set));
    return new Levelled(Optional.of(pair), List.of());
  }

  /** d: for a voltage √2·V_rms divided by volts per full scale; for a digital drive 10^(dBFS/20). */
  static double digitalPeak(Drive drive, Chain chain) {
    if (drive instanceof Drive.Voltage voltage) {
      double voltsPerFullScale = chain.output().orElseThrow().voltsPerFullScale();
      return Math.sqrt(2) * voltage.millivoltsRms() / 1000 / voltsPerFullScale;
    }
    return Math.pow(10, ((Drive.Digital) drive).dbfs() / 20);
  }

  private static StoredChannel stored(Channel channel, HeardPair pair, Chain chain, LimitSet set) {
    Curve half = chain.correction().orElseThrow().leftMinusRight().times(channel == Channel.LEFT ? -0.5 : 0.5);
    if (pair.of(channel) instanceof Heard.Finished finished) {
      return fromCurve(finished.curve(), half);
    }
    Response response = ((Heard.Clear) pair.of(channel)).response();
    double pascal = chain.microphones().get(channel).pascalPerFullScale();
    double gainDb = decibels(digitalPeak(set.drive(), chain) / Math.sqrt(2) * pascal / REFERENCE_PASCAL);
    return new StoredChannel(
        response.level().plus(gainDb).plus(half).toFloats(),
        Floats.narrow(response.phaseDeg()),
        response.signalToNoise().toFloats(),
        response.arrivalSeconds(),
        response.peak());
  }

  private static StoredChannel fromCurve(CurveFile curve, Curve half) {
    float[] phase = curve.phaseDeg().map(Floats::narrow).orElse(null);
    return new StoredChannel(curve.level().plus(half).toFloats(), phase, null, null, null);
  }

  private static double decibels(double ratio) {
    return 20 * Math.log10(ratio);
  }
}
