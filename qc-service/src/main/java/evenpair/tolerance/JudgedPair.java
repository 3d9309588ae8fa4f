package evenpair.tolerance;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Smoothing;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * A pair as the checks see it: smoothed like the golden response, with its alignment worked out
 * once.
 */
final class JudgedPair {
  private final MeasuredPair measured;
  private final Guard guard;
  private final Map<Channel, Curve> offset = new EnumMap<>(Channel.class);
  private final Map<Channel, Double> alignment = new EnumMap<>(Channel.class);
  private final Curve difference;

  /**
   * @param golden smoothed
   */
  JudgedPair(
      MeasuredPair measured, Guard guard, Curve golden, Smoothing smoothing, Band alignmentBand) {
    this.measured = measured;
    this.guard = guard;
    Map<Channel, Curve> level = new EnumMap<>(Channel.class);
    for (Channel channel : Channel.values()) {
      level.put(channel, smoothing.apply(measured.of(channel).level()));
      Curve fromGolden = level.get(channel).minus(golden);
      offset.put(channel, fromGolden);
      if (fromGolden.covers(alignmentBand)) {
        alignment.put(channel, fromGolden.median(alignmentBand));
      }
    }
    this.difference = level.get(Channel.LEFT).minus(level.get(Channel.RIGHT));
  }

  /**
   * @return the guard bands of this judgement
   */
  Guard guard() {
    return guard;
  }

  /**
   * @return the pair unsmoothed, with its phase
   */
  MeasuredPair measured() {
    return measured;
  }

  /**
   * @return L_c − G, dB; absent where the channel has no data
   */
  Curve offset(Channel channel) {
    return offset.get(channel);
  }

  /**
   * @return a_c, the median of L_c − G over the alignment band; empty if a point of it is absent
   */
  Optional<Double> alignment(Channel channel) {
    return Optional.ofNullable(alignment.get(channel));
  }

  /**
   * @return d_c = L_c − G − a_c; empty without an alignment
   */
  Optional<Curve> deviation(Channel channel) {
    return alignment(channel).map(a -> offset(channel).plus(-a));
  }

  /**
   * @return L_L − L_R, not aligned (an aligned match would hide imbalance)
   */
  Curve difference() {
    return difference;
  }

  /**
   * @return a_L − a_R; empty without both
   */
  Optional<Double> imbalance() {
    return alignment(Channel.LEFT)
        .flatMap(left -> alignment(Channel.RIGHT).map(right -> left - right));
  }
}
