package evenpair.stations;

import evenpair.acoustics.Curve;
import evenpair.acoustics.EarSimulator;
import evenpair.tolerance.Channel;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** The stations of the line and what each can be trusted with. */
public interface Stations {
  /** @return every station by name */
  List<String> names();

  /**
   * @return the newest calibrations and correction of the station at or before that instant, valid or not (the caller compares
   *     with {@code validUntil}); empty if there is no such station
   */
  Optional<Chain> chainAt(String station, Instant at);

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
      Optional<Correction> correction) {}

  /** @param pascalPerFullScale sound pressure (instantaneous, Pa) that a sample of 1.0 stands for */
  record Microphone(
      UUID id,
      Channel channel,
      EarSimulator earSimulator,
      String earSimulatorSerial,
      double pascalPerFullScale,
      Instant at,
      Instant validUntil) {}

  /** @param voltsPerFullScale voltage (instantaneous, V) at the earphone's terminals for a sample of 1.0 */
  record Output(UUID id, double voltsPerFullScale, Instant at, Instant validUntil) {}

  /**
   * The station's own left−right difference. Half of it is taken from the left level and half added to the right one.
   *
   * @param leftMinusRight s(f) in dB
   * @param uncertainty standard uncertainty u(f) in dB
   */
  record Correction(UUID id, int version, Curve leftMinusRight, Curve uncertainty, Instant at, Instant validUntil) {}
}
