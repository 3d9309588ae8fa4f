package evenpair.tolerance;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Smoothing;
import evenpair.tolerance.LengthMode.Peak;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The looks at a mounting in turn: off the simulator, leak, depth. */
final class MountingCheck implements SeatingCheck {
  /** An earpiece so far below golden is not on the simulator (common practice). */
  private static final double OFF_DB = 20;

  /**
   * So much of the curve must lie that far below: noise fills in the deepest bass of an earpiece
   * that is off, and a single live driver covers more than the rest.
   */
  private static final double OFF_SHARE = 0.9;

  private static final Band DEEP = new Band(20, 50);
  private static final Band MIDDLE = new Band(300, 1000);

  /**
   * Left and right may be apart by so many times the set's depth limit: √2 of two equal spreads.
   */
  private static final double APART = 1.4;

  private static final double SAME_LOSS_DB = 1;

  private final LimitSet.SeatingRules rules;
  private final Band alignmentBand;
  private final Curve golden;
  private final LengthMode mode;

  MountingCheck(LimitSet set, GoldenResponse golden) {
    this.rules = set.seating();
    this.alignmentBand = set.level().band();
    this.golden = Smoothing.TWELFTH_OCTAVE.apply(golden.level());
    this.mode = new LengthMode(this.golden, rules.depthSearch());
  }

  @Override
  public boolean tellsDepth() {
    return mode.isKnown();
  }

  @Override
  public Optional<SeatingSuspicion> examine(MeasuredChannel measured, Channel channel) {
    return suspicion(smooth(measured), channel);
  }

  @Override
  public List<SeatingSuspicion> examine(MeasuredPair pair, List<Reason> earlier) {
    Map<Channel, Curve> levels = new EnumMap<>(Channel.class);
    List<SeatingSuspicion> found = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      levels.put(channel, smooth(pair.of(channel)));
      suspicion(levels.get(channel), channel)
          .map(suspicion -> suspicion.repeating(repeats(suspicion, earlier)))
          .ifPresent(found::add);
    }
    if (found.isEmpty()) {
      apart(levels.get(Channel.LEFT), levels.get(Channel.RIGHT)).ifPresent(found::add);
    }
    return List.copyOf(found);
  }

  private static Curve smooth(MeasuredChannel measured) {
    return Smoothing.TWELFTH_OCTAVE.apply(measured.level());
  }

  private Optional<SeatingSuspicion> suspicion(Curve level, Channel channel) {
    Curve fromGolden = level.minus(golden);
    return off(fromGolden, channel)
        .or(() -> leak(fromGolden, channel))
        .or(() -> depth(level, channel));
  }

  private static Optional<SeatingSuspicion> off(Curve fromGolden, Channel channel) {
    double[] rising =
        Arrays.stream(fromGolden.toArray()).filter(db -> !Double.isNaN(db)).sorted().toArray();
    if (rising.length == 0) {
      return Optional.empty();
    }
    double below = -rising[(int) Math.ceil(OFF_SHARE * rising.length) - 1];
    return below > OFF_DB
        ? found(ReasonKind.OFF_SIMULATOR, channel, below, OFF_DB, null)
        : Optional.empty();
  }

  /** A curve that does not reach 20 Hz, or misses a point, tells nothing of leaks. */
  private Optional<SeatingSuspicion> leak(Curve fromGolden, Channel channel) {
    if (!fromGolden.covers(LeakFit.BAND) || !fromGolden.covers(alignmentBand)) {
      return Optional.empty();
    }
    Curve deviation = fromGolden.plus(-fromGolden.median(alignmentBand));
    double loss = deviation.mean(MIDDLE) - deviation.mean(DEEP);
    if (!(loss > rules.leakDb())) {
      return Optional.empty();
    }
    LossShape leak = LeakFit.leak(deviation);
    return leak == null
        ? Optional.empty()
        : found(ReasonKind.LEAK, channel, loss, rules.leakDb(), leak.cornerHz());
  }

  private Optional<SeatingSuspicion> depth(Curve level, Channel channel) {
    return mode.in(aligned(level))
        .filter(peak -> Math.abs(mode.shiftPercent(peak)) > rules.depthPercent())
        .flatMap(
            peak ->
                found(
                    ReasonKind.DEPTH,
                    channel,
                    mode.shiftPercent(peak),
                    rules.depthPercent(),
                    peak.hz()));
  }

  private Optional<SeatingSuspicion> apart(Curve left, Curve right) {
    Optional<Peak> ofLeft = mode.in(aligned(left));
    Optional<Peak> ofRight = mode.in(aligned(right));
    if (ofLeft.isEmpty() || ofRight.isEmpty()) {
      return Optional.empty();
    }
    double allowed = APART * rules.depthPercent();
    double apart = LengthMode.percent(ofLeft.get(), ofRight.get());
    return Math.abs(apart) > allowed
        ? found(ReasonKind.DEPTH, null, apart, allowed, ofLeft.get().hz())
        : Optional.empty();
  }

  /** As loud as the golden response; a curve that misses a part of the band stays as it is. */
  private Curve aligned(Curve level) {
    Curve fromGolden = level.minus(golden);
    return fromGolden.covers(alignmentBand) ? level.plus(-fromGolden.median(alignmentBand)) : level;
  }

  private static boolean repeats(SeatingSuspicion suspicion, List<Reason> earlier) {
    return suspicion.kind() == ReasonKind.LEAK
        && earlier.stream()
            .filter(reason -> reason.kind() == ReasonKind.LEAK)
            .filter(reason -> reason.channel() == suspicion.channel())
            .anyMatch(reason -> Math.abs(reason.measuredDb() - suspicion.size()) <= SAME_LOSS_DB);
  }

  private static Optional<SeatingSuspicion> found(
      ReasonKind kind, Channel channel, double size, double limit, Double hz) {
    return Optional.of(new SeatingSuspicion(kind, channel, size, limit, hz, false));
  }
}
