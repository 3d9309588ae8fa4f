package evenpair.stations;

import evenpair.acoustics.Curve;
import evenpair.acoustics.EarSimulator;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Drive;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/** The stations of the line and what each can be trusted with. */
public interface Stations {
  /**
   * @return every station by name
   */
  List<String> names();

  /**
   * @return the newest calibrations and correction of the station at or before that instant, valid
   *     or not (the caller compares with {@code validUntil}); empty if there is no such station
   */
  Optional<Chain> chainAt(String station, Instant at);

  /**
   * The chain that a record names, whatever has been measured since.
   *
   * @param output null if the record names none; so is
   * @param correction
   * @return empty if there is no such station or one of them is not on record
   */
  Optional<Chain> chainOf(
      String station, UUID leftMicrophone, UUID rightMicrophone, UUID output, UUID correction);

  /**
   * Whether the station as a whole may not judge at that instant: a calibration moved and no second
   * one agrees, or a shift verification failed, and no engineer has cleared it by then.
   *
   * @return the first cause; empty if it may judge, or if there is no such station
   */
  Optional<Block> blockedAt(String station, Instant at);

  /**
   * As {@link #blockedAt(String, Instant)}, and where the plant demands it ({@code
   * evenpair.stations.verification-required}) also while the station has a reference unit for that
   * tuning but no verification by it that still holds.
   */
  Optional<Block> blockedAt(String station, String product, String tuning, Instant at);

  /**
   * What a measurement on the station is worth, from its newest complete gauge study of that tuning
   * together with calibrator and correction.
   *
   * @return empty without a valid study, a valid correction or valid calibrations at that instant:
   *     never an uncertainty of 0
   */
  Optional<UncertaintyBudget> budgetAt(String station, String product, String tuning, Instant at);

  /**
   * What left − right is worth on region means, by name of region: from the newest complete gauge
   * study of that tuning on region means themselves, together with the left/right correction (its
   * mean over the region: one error for all points, as the same swap study made it).
   *
   * @return empty without a valid study or correction; a region without data is missing
   */
  Map<String, UncertaintyBudget.Scalar> differenceOfRegions(
      String station, String product, String tuning, Instant at);

  /**
   * @return A-weighted level of the station's own noise with nothing connected, dB(A) re 20 µPa, as
   *     last measured at or before that instant; empty if never measured or no longer valid
   */
  OptionalDouble idleFloorDba(String station, Channel channel, Instant at);

  /**
   * @return the newest shift verification of each tuning, and those that the plant demands and that
   *     are missing; empty if there is no such station
   */
  List<Verified> verificationsAt(String station, Instant at);

  /**
   * @param passed whether the reference unit repeated its certified curve; false if never measured
   * @param measuredAt null if never measured
   * @param validUntil null if never measured
   */
  record Verified(
      String product, String tuning, boolean passed, Instant measuredAt, Instant validUntil) {}

  /**
   * Both ends of a station's measuring chain at one instant.
   *
   * @param microphones by channel; a channel never calibrated is missing
   * @param output empty if never calibrated
   * @param correction empty if there was no swap study
   */
  record Chain(
      UUID stationId,
      String station,
      Map<Channel, Microphone> microphones,
      Optional<Output> output,
      Optional<Correction> correction) {
    private static final double REFERENCE_PASCAL = 20e-6;

    /**
     * The digital peak d that gives the set's drive: for a voltage √2·V_rms divided by volts per
     * full scale; for a digital drive 10^(dBFS/20).
     *
     * @throws java.util.NoSuchElementException for a voltage without an output calibration
     */
    public double digitalPeak(Drive drive) {
      if (drive instanceof Drive.Voltage voltage) {
        return Math.sqrt(2)
            * voltage.millivoltsRms()
            / 1000
            / output.orElseThrow().voltsPerFullScale();
      }
      return Math.pow(10, ((Drive.Digital) drive).dbfs() / 20);
    }

    /**
     * @param levelDb response of a capture on that channel, dB re FS/FS
     * @return level in dB SPL at the drive: L = 20·lg(|H|·d/√2·P/20 µPa), P pascal per full scale
     */
    public Curve soundPressureLevel(Curve levelDb, Channel channel, Drive drive) {
      double pascal = microphones.get(channel).pascalPerFullScale();
      return levelDb.plus(
          20 * Math.log10(digitalPeak(drive) / Math.sqrt(2) * pascal / REFERENCE_PASCAL));
    }

    /**
     * @return the level with the station's own left − right difference s taken out: L_left − s/2,
     *     L_right + s/2
     * @throws java.util.NoSuchElementException without a correction
     */
    public Curve corrected(Curve levelDb, Channel channel) {
      return levelDb.plus(
          correction.orElseThrow().leftMinusRight().times(channel == Channel.LEFT ? -0.5 : 0.5));
    }
  }

  /**
   * @param pascalPerFullScale sound pressure (instantaneous, Pa) that a sample of 1.0 stands for
   */
  record Microphone(
      UUID id,
      Channel channel,
      EarSimulator earSimulator,
      String earSimulatorSerial,
      double pascalPerFullScale,
      Instant at,
      Instant validUntil) {}

  /**
   * @param voltsPerFullScale voltage (instantaneous, V) at the earphone's terminals for a sample of
   *     1.0
   */
  record Output(UUID id, double voltsPerFullScale, Instant at, Instant validUntil) {}

  /**
   * The station's own left−right difference. Half of it is taken from the left level and half added
   * to the right one.
   *
   * @param leftMinusRight s(f) in dB
   * @param uncertainty standard uncertainty u(f) in dB
   */
  record Correction(
      UUID id,
      int version,
      Curve leftMinusRight,
      Curve uncertainty,
      Instant at,
      Instant validUntil) {}
}
