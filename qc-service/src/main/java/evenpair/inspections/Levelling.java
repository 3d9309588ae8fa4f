package evenpair.inspections;

import evenpair.acoustics.Curve;
import evenpair.acoustics.IdleNoise;
import evenpair.acoustics.Response;
import evenpair.captures.CurveFile;
import evenpair.stations.Stations.Chain;
import evenpair.tolerance.Channel;
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
   * Sound pressure level at the set's drive, the station's own left − right difference taken out;
   * distortion and idle noise beside it.
   *
   * @param driveToleranceDb how far the stimulus' own peak may lie from d; within it the level is
   *     scaled as linear
   */
  static Levelled level(HeardPair heard, Surroundings at, LimitSet set, double driveToleranceDb) {
    Chain chain = at.chain();
    List<Reason> flaws = new ArrayList<>(heard.flaws());
    List<Reason> chainProblems =
        ChainCheck.problems(chain, set, heard.stimulus().isPresent(), at.measuredAt());
    flaws.addAll(chainProblems);
    if (!heard.flaws().isEmpty() || !chainProblems.isEmpty()) {
      return Levelled.refused(flaws);
    }
    if (heard.stimulus().isPresent()) {
      double played = decibels(heard.stimulus().get().sweep().amplitude());
      double wanted = decibels(chain.digitalPeak(set.drive()));
      if (Math.abs(played - wanted) > driveToleranceDb) {
        return Levelled.refused(List.of(Reason.of(ReasonKind.WRONG_DRIVE, null, played, wanted)));
      }
    }
    StoredPair pair =
        new StoredPair(stored(Channel.LEFT, heard, at, set), stored(Channel.RIGHT, heard, at, set));
    return new Levelled(Optional.of(pair), List.of());
  }

  private static StoredChannel stored(
      Channel channel, HeardPair pair, Surroundings at, LimitSet set) {
    Chain chain = at.chain();
    StoredIdle idle = idle(channel, pair, at);
    if (pair.of(channel) instanceof Heard.Finished finished) {
      return fromCurve(finished.curve(), channel, chain, idle);
    }
    Heard.Clear clear = (Heard.Clear) pair.of(channel);
    Response response = clear.response();
    Curve level = chain.soundPressureLevel(response.level(), channel, set.drive());
    return new StoredChannel(
        chain.corrected(level, channel).toFloats(),
        Floats.narrow(response.phaseDeg()),
        response.signalToNoise().toFloats(),
        response.arrivalSeconds(),
        response.peak(),
        StoredDistortion.of(clear.distortion()),
        idle);
  }

  private static StoredChannel fromCurve(
      CurveFile curve, Channel channel, Chain chain, StoredIdle idle) {
    float[] phase = curve.phaseDeg().map(Floats::narrow).orElse(null);
    return new StoredChannel(
        chain.corrected(curve.level(), channel).toFloats(), phase, null, null, null, null, idle);
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
            .map(
                tone ->
                    new MeasuredIdleNoise.Tone(
                        tone.hz(), tone.aboveDb(), tone.origin() != IdleNoise.Origin.UNNAMED))
            .toList();
    return new StoredIdle(
        decibels(noise.weightedRms() * pascal / REFERENCE_PASCAL),
        at.idleFloorDba().get(channel),
        tones);
  }

  private static double decibels(double ratio) {
    return 20 * Math.log10(ratio);
  }
}
