package evenpair.stations;

import evenpair.stations.StationRegister.Newest;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Drive;
import evenpair.tolerance.LimitSet;
import evenpair.web.Refusal;
import java.time.Instant;

/** Whether a station's calibrations and correction hold for what is to be measured on it. */
final class TrustedChain {
  private TrustedChain() {}

  /**
   * @param recorded whether a recording was sent: a finished curve needs no output calibration
   * @throws Refusal 409 naming what is missing or expired, 422 for another type of ear simulator
   */
  static void require(Newest newest, LimitSet set, boolean recorded, Instant at) {
    for (Channel channel : Channel.values()) {
      MicrophoneCalibrationRow row = newest.microphones().get(channel);
      require(row, at, "calibration", "The " + channel.word() + " microphone's calibration");
      requireSimulator(row, set);
    }
    if (recorded && set.drive() instanceof Drive.Voltage) {
      require(newest.output().orElse(null), at, "output-calibration", "The output's calibration");
    }
    require(newest.correction().orElse(null), at, "correction", "The left/right correction");
  }

  private static void require(InsertOnlyRow row, Instant at, String type, String what) {
    if (row == null) {
      throw new Refusal(409, type + "-missing", what + " is missing; send one first.");
    }
    if (!row.validAt(at)) {
      throw new Refusal(
          409,
          type + "-expired",
          what + " held until " + row.provenance().validUntil() + "; send a new one first.");
    }
  }

  private static void requireSimulator(MicrophoneCalibrationRow row, LimitSet set) {
    if (row.simulator().type() != set.earSimulator()) {
      throw new Refusal(
              422,
              "ear-simulator-differs",
              "The station measures the "
                  + row.simulator().channel().word()
                  + " channel on an ear simulator of type "
                  + row.simulator().type().label()
                  + ", but the limits of '"
                  + set.product()
                  + "' in tuning '"
                  + set.tuning()
                  + "' are for "
                  + set.earSimulator().label()
                  + ".")
          .with("field", "station")
          .with("expected", set.earSimulator().label());
    }
  }
}
