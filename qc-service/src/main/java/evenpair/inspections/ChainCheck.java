package evenpair.inspections;

import evenpair.acoustics.EarSimulator;
import evenpair.stations.Stations.Chain;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Drive;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Reason;
import evenpair.tolerance.ReasonKind;
import evenpair.web.Refusal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Whether a station could be trusted at one instant with what a limit set asks for. */
final class ChainCheck {
  private ChainCheck() {}

  /**
   * Every set judges level, balance and match, so that both microphones and the left/right
   * correction are always needed; the output calibration only where the drive is a voltage and a
   * recording was sent.
   *
   * @param recorded whether at least one side is a recording, not a finished curve
   * @return what is missing or expired; empty if all is well
   */
  static List<Reason> problems(Chain chain, LimitSet set, boolean recorded, Instant at) {
    List<Reason> problems = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      Optional<Instant> until =
          Optional.ofNullable(chain.microphones().get(channel)).map(m -> m.validUntil());
      add(
          problems,
          channel,
          until,
          at,
          ReasonKind.CALIBRATION_MISSING,
          ReasonKind.CALIBRATION_EXPIRED);
    }
    if (recorded && set.drive() instanceof Drive.Voltage) {
      Optional<Instant> until = chain.output().map(o -> o.validUntil());
      add(
          problems,
          null,
          until,
          at,
          ReasonKind.OUTPUT_CALIBRATION_MISSING,
          ReasonKind.OUTPUT_CALIBRATION_EXPIRED);
    }
    Optional<Instant> until = chain.correction().map(c -> c.validUntil());
    add(problems, null, until, at, ReasonKind.CORRECTION_MISSING, ReasonKind.CORRECTION_EXPIRED);
    return problems;
  }

  private static void add(
      List<Reason> problems,
      Channel channel,
      Optional<Instant> until,
      Instant at,
      ReasonKind missing,
      ReasonKind expired) {
    if (until.isEmpty()) {
      problems.add(Reason.of(missing, channel, null, null));
    } else if (!at.isBefore(until.get())) {
      problems.add(Reason.of(expired, channel, null, null));
    }
  }

  /**
   * @throws Refusal 422 naming both types if a simulator of the station is of another type than the
   *     set's
   */
  static void requireSameSimulator(Chain chain, LimitSet set) {
    for (Channel channel : Channel.values()) {
      EarSimulator there =
          Optional.ofNullable(chain.microphones().get(channel))
              .map(m -> m.earSimulator())
              .orElse(null);
      if (there != null && there != set.earSimulator()) {
        String detail =
            "Station '%s' measures the %s channel on an ear simulator of type %s, but the limits of '%s' in tuning '%s' are for %s."
                .formatted(
                    chain.station(),
                    channel.word(),
                    there.label(),
                    set.product(),
                    set.tuning(),
                    set.earSimulator().label());
        throw new Refusal(422, "ear-simulator-differs", detail)
            .with("field", "station")
            .with("expected", set.earSimulator().label());
      }
    }
  }
}
