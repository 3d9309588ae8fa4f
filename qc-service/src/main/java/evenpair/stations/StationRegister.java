package evenpair.stations;

import evenpair.tolerance.Channel;
import evenpair.web.Ids;
import evenpair.web.Refusal;
import java.time.Clock;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The stations and the newest of what was measured about them. */
@Service
@Transactional(readOnly = true)
class StationRegister {
  private static final Pattern NAME = Pattern.compile("[a-z0-9-]{1,32}");

  private final StationRows stations;
  private final MicrophoneCalibrationRows microphones;
  private final OutputCalibrationRows outputs;
  private final CorrectionRows corrections;
  private final Ids ids;
  private final Clock clock;

  StationRegister(
      StationRows stations,
      MicrophoneCalibrationRows microphones,
      OutputCalibrationRows outputs,
      CorrectionRows corrections,
      Ids ids,
      Clock clock) {
    this.stations = stations;
    this.microphones = microphones;
    this.outputs = outputs;
    this.corrections = corrections;
    this.ids = ids;
    this.clock = clock;
  }

  /**
   * @return every station by name
   */
  List<String> names() {
    return stations.names();
  }

  /**
   * @param id of a station that is there: rows refer to it
   */
  String name(UUID id) {
    return stations.findById(id).orElseThrow().name();
  }

  Optional<StationRow> find(String station) {
    return stations.findByName(station);
  }

  /**
   * @return everything about every station, by name
   */
  List<Newest> all(Instant at) {
    return stations.findAllByOrderByName().stream().map(row -> newest(row, at)).toList();
  }

  /**
   * @throws Refusal 404 with the known names if there is no such station
   */
  Newest newest(String station, Instant at) {
    return newest(require(station), at);
  }

  /**
   * @throws Refusal 404 with the known names if there is no such station
   */
  StationRow require(String station) {
    return stations
        .findByName(station)
        .orElseThrow(
            () ->
                new Refusal(
                        404,
                        "unknown-station",
                        "There is no station of that name; PUT /api/stations/{station} makes one.")
                    .with("field", "station")
                    .with("choices", names()));
  }

  /**
   * Makes the station, or changes its note. Without a note the present one stays.
   *
   * @return true if it is new
   * @throws Refusal 400 if the name breaks the rule
   */
  @Transactional
  boolean put(String name, String note) {
    if (!NAME.matcher(name).matches()) {
      String rule = "1 to 32 of a–z, 0–9 and -";
      throw new Refusal(400, "invalid-field", "A station's name is " + rule + ".")
          .with("field", "station")
          .with("expected", rule);
    }
    boolean isNew = stations.findByName(name).isEmpty();
    stations.put(ids.next(), name, note, clock.instant());
    return isNew;
  }

  Newest newest(StationRow row, Instant at) {
    Map<Channel, MicrophoneCalibrationRow> byChannel = new EnumMap<>(Channel.class);
    for (Channel channel : Channel.values()) {
      microphones.newest(row.id(), channel, at).ifPresent(found -> byChannel.put(channel, found));
    }
    return new Newest(
        row, byChannel, outputs.newest(row.id(), at), corrections.newest(row.id(), at));
  }

  /**
   * @return the rows of those keys; empty if one of them is missing
   */
  Optional<Newest> named(
      StationRow row, UUID leftMicrophone, UUID rightMicrophone, UUID output, UUID correction) {
    Map<Channel, MicrophoneCalibrationRow> byChannel = new EnumMap<>(Channel.class);
    microphones.findById(leftMicrophone).ifPresent(found -> byChannel.put(Channel.LEFT, found));
    microphones.findById(rightMicrophone).ifPresent(found -> byChannel.put(Channel.RIGHT, found));
    Optional<OutputCalibrationRow> volts = Optional.ofNullable(output).flatMap(outputs::findById);
    Optional<CorrectionRow> difference =
        Optional.ofNullable(correction).flatMap(corrections::findById);
    boolean whole =
        byChannel.size() == Channel.values().length
            && volts.isPresent() == (output != null)
            && difference.isPresent() == (correction != null);
    return whole ? Optional.of(new Newest(row, byChannel, volts, difference)) : Optional.empty();
  }

  /** The newest rows of a station at or before one instant. */
  record Newest(
      StationRow station,
      Map<Channel, MicrophoneCalibrationRow> microphones,
      Optional<OutputCalibrationRow> output,
      Optional<CorrectionRow> correction) {
    Stations.Chain toChain() {
      Map<Channel, Stations.Microphone> byChannel = new EnumMap<>(Channel.class);
      microphones.forEach((channel, row) -> byChannel.put(channel, row.toMicrophone()));
      return new Stations.Chain(
          station.id(),
          station.name(),
          byChannel,
          output.map(OutputCalibrationRow::toOutput),
          correction.map(CorrectionRow::toCorrection));
    }
  }
}
