package evenpair.inspections;

import evenpair.acoustics.Curve;
import evenpair.acoustics.IdleNoise;
import evenpair.acoustics.Response;
import evenpair.captures.CurveFile;
import evenpair.stations.Stations.Chain;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Drive;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.MeasuredIdleNoise;
import evenpair.tolerance.Reason;
import evenpair.tolerance.ReasonKind;
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
  record Levelled(Optional<StoredPair> curves, List<Reason> flaws) {
    static Levelled refused(List<Reason> flaws) {
      return new Levelled(Optional.empty(), List.copyOf(flaws));
    }
  }

  /**
   * L = 20·lg(|H|·d/√2·P/20 µPa), H the response in FS/FS, d the digital peak that gives the set's drive, P pascal per full
   * scale. Then the station's own left−right difference s is taken out: L_left − s/2, L_right + s/2.
   *
   * @param driveToleranceDb how far the stimulus' own peak may lie from d; within it the level is scaled as linear
   */
  static Levelled level(HeardPair heard, Surroundings at, LimitSet set, double driveToleranceDb) {
    Chain chain = at.chain();
    List<Reason> flaws = new ArrayList<>(heard.flaws());
    List<Reason> chainProblems = ChainCheck.problems(chain, set, heard.stimulus().isPresent(), at.measuredAt());
    flaws.addAll(chainProblems);
    if (!heard.flaws().isEmpty() || !chainProblems.isEmpty()) {
      return Levelled.refused(flaws);
    }
    if (heard.stimulus().isPresent()) {
      double played = decibels(heard.stimulus().get().sweep().amplitude());
      double wanted = decibels(digitalPeak(set.drive(), chain));
      if (Math.abs(played - wanted) > driveToleranceDb) {
        return Levelled.refused(List.of(Reason.of(ReasonKind.WRONG_DRIVE, null, played, wanted)));
      }
    }
    StoredPair pair =
        new StoredPair(stored(Channel.LEFT, heard, at, set), stored(Channel.RIGHT, heard, at, set));
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

  private static StoredChannel stored(Channel channel, HeardPair pair, Surroundings at, LimitSet set) {
    Chain chain = at.chain();
    StoredIdle idle = idle(channel, pair, at);
    Curve half = chain.correction().orElseThrow().leftMinusRight().times(channel == Channel.LEFT ? -0.5 : 0.5);
    if (pair.of(channel) instanceof Heard.Finished finished) {
      return fromCurve(finished.curve(), half, idle);
    }
    Heard.Clear clear = (Heard.Clear) pair.of(channel);
    Response response = clear.response();
    double pascal = chain.microphones().get(channel).pascalPerFullScale();
    double gainDb = decibels(digitalPeak(set.drive(), chain) / Math.sqrt(2) * pascal / REFERENCE_PASCAL);
    return new StoredChannel(
        response.level().plus(gainDb).plus(half).toFloats(),
        Floats.narrow(response.phaseDeg()),
        response.signalToNoise().toFloats(),
        response.arrivalSeconds(),
        response.peak(),
        StoredDistortion.of(clear.distortion()),
        idle);
  }

  private static StoredChannel fromCurve(CurveFile curve, Curve half, StoredIdle idle) {
    float[] phase = curve.phaseDeg().map(Floats::narrow).orElse(null);
    return new StoredChannel(curve.level().plus(half).toFloats(), phase, null, null, null, null, idle);
  }

  /** Idle noise is the unit's own: neither drive nor left/right correction has a part in it. */
  private static StoredIdle idle(Channel channel, HeardPair pair, Surroundings at) {
    IdleNoise noise = pair.idle().get(channel);
    if (noise == null) {
      return null;
    }
    double pascal = at.chain().microphones().get(channel).pascalPerFullScale();
    List<MeasuredIdleNoise.Tone> tones =
        noise.tones().stream()
            .map(tone -> new MeasuredIdleNoise.Tone(tone.hz(), tone.aboveDb(), tone.origin() != IdleNoise.Origin.UNNAMED))
            .toList();
    return new StoredIdle(decibels(noise.weightedRms() * pascal / REFERENCE_PASCAL), at.idleFloorDba().get(channel), tones);
  }

  private static double decibels(double ratio) {
    return 20 * Math.log10(ratio);
  }
}
