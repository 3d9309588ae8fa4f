package evenpair.tolerance;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Smoothing;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The looks at a mounting in turn: off the simulator, leak, depth. */
final class MountingCheck implements SeatingCheck {
  /** An earpiece so far below golden is not on the simulator (common practice). */
  private static final double OFF_DB = 20;

  private final Curve golden;

  MountingCheck(LimitSet set, GoldenResponse golden) {
    this.golden = Smoothing.TWELFTH_OCTAVE.apply(golden.level());
  }

  @Override
  public Optional<SeatingSuspicion> examine(MeasuredChannel measured, Channel channel) {
    return off(Smoothing.TWELFTH_OCTAVE.apply(measured.level()).minus(golden), channel);
  }

  @Override
  public List<SeatingSuspicion> examine(MeasuredPair pair, List<SeatingSuspicion> earlier) {
    List<SeatingSuspicion> found = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      examine(pair.of(channel), channel).ifPresent(found::add);
    }
    return List.copyOf(found);
  }

  @Override
  public boolean tellsDepth() {
    return false;
  }

  private static Optional<SeatingSuspicion> off(Curve fromGolden, Channel channel) {
    double nearest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < Grid.POINTS; i++) {
      nearest = fromGolden.has(i) ? Math.max(nearest, fromGolden.at(i)) : nearest;
    }
    return Double.isFinite(nearest) && nearest < -OFF_DB
        ? Optional.of(
            new SeatingSuspicion(
                ReasonKind.OFF_SIMULATOR, channel, -nearest, OFF_DB, null, false))
        : Optional.empty();
  }
}
