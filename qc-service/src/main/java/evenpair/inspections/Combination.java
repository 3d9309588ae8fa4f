package evenpair.inspections;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.tolerance.Channel;
import evenpair.tolerance.MeasuredChannel;
import evenpair.tolerance.MeasuredPair;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;

/**
 * Valid seatings combine as the mean in dB of their stored levels, distortion and idle noise;
 * phases as the mean direction. One code path for all uses.
 */
final class Combination {
  private Combination() {}

  /**
   * @param seatings one at least, in the order of their attempts
   */
  static MeasuredPair of(List<StoredPair> seatings) {
    return new MeasuredPair(of(seatings, Channel.LEFT), of(seatings, Channel.RIGHT));
  }

  private static MeasuredChannel of(List<StoredPair> seatings, Channel channel) {
    List<StoredChannel> channels = seatings.stream().map(seating -> seating.of(channel)).toList();
    if (channels.size() == 1) {
      return channels.get(0).measured();
    }
    return new MeasuredChannel(
        level(channels.stream().map(StoredChannel::levelDb).toList()),
        phase(channels.stream().map(StoredChannel::phaseDeg).toList()),
        whole(channels, StoredChannel::distortion).map(StoredDistortion::mean),
        whole(channels, StoredChannel::idle).map(StoredIdle::mean));
  }

  /**
   * @return the mean in dB, point by point; one seating stays what it is, to the bit
   */
  static Curve level(List<float[]> levels) {
    return Curve.mean(levels.stream().map(Curve::ofFloats).toList());
  }

  /**
   * @return what every seating has; empty if one of them lacks it
   */
  private static <T> Optional<List<T>> whole(
      List<StoredChannel> channels, Function<StoredChannel, T> part) {
    List<T> parts = channels.stream().map(part).filter(Objects::nonNull).toList();
    return parts.size() == channels.size() ? Optional.of(parts) : Optional.empty();
  }

  /**
   * Mean direction: the angle of Σ e^{jφ}; one seating stays what it is, to the bit; unknown unless
   * every seating has a phase.
   *
   * @param phasesDeg one for each seating; null where it is unknown
   */
  static Optional<double[]> phase(List<float[]> phasesDeg) {
    if (phasesDeg.stream().anyMatch(Objects::isNull)) {
      return Optional.empty();
    }
    if (phasesDeg.size() == 1) {
      return Optional.of(Floats.widen(phasesDeg.get(0)));
    }
    double[] mean = new double[Grid.POINTS];
    for (int i = 0; i < mean.length; i++) {
      double sine = 0;
      double cosine = 0;
      for (float[] phase : phasesDeg) {
        sine += Math.sin(Math.toRadians(phase[i]));
        cosine += Math.cos(Math.toRadians(phase[i]));
      }
      mean[i] = Math.toDegrees(Math.atan2(sine, cosine));
    }
    return Optional.of(mean);
  }
}
