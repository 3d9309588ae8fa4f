package evenpair.stations;

import evenpair.tolerance.Channel;
import evenpair.web.Refusal;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@Tag(name = "stations")
class CalibrationDriftController {
  private static final List<String> KINDS = List.of("microphone", "output");
  private static final List<String> CHANNELS =
      Arrays.stream(Channel.values()).map(Channel::word).toList();

  private final StationRegister register;
  private final MicrophoneCalibrationRows microphones;
  private final OutputCalibrationRows outputs;
  private final StationSettings settings;
  private final Clock clock;

  CalibrationDriftController(
      StationRegister register,
      MicrophoneCalibrationRows microphones,
      OutputCalibrationRows outputs,
      StationSettings settings,
      Clock clock) {
    this.register = register;
    this.microphones = microphones;
    this.outputs = outputs;
    this.settings = settings;
    this.clock = clock;
  }

  @GetMapping("/api/stations/{station}/drift")
  @ApiResponse(responseCode = "200", useReturnTypeSchema = true)
  @Operation(
      summary = "How a gain of the station moves",
      description = "A control chart of the newest 100 calibrations of one microphone, or of the output.")
  CalibrationDrift drift(
      @PathVariable String station,
      @Parameter(example = "microphone", description = "microphone or output") @RequestParam String what,
      @Parameter(example = "left", description = "of a microphone") @RequestParam(required = false) String channel) {
    requireWord("what", what, KINDS);
    UUID id = register.require(station).id();
    Instant now = clock.instant();
    return CalibrationDrift.of(
        what.equals("output") ? output(id, now) : microphone(id, channelOf(channel), now), settings.changeDb());
  }

  private List<CalibrationDrift.Reading> microphone(UUID station, Channel channel, Instant now) {
    return microphones.newestHundred(station, channel, now).stream()
        .map(row -> new CalibrationDrift.Reading(row.provenance().measuredAt(), row.pascalPerFullScale()))
        .toList();
  }

  private List<CalibrationDrift.Reading> output(UUID station, Instant now) {
    return outputs.newestHundred(station, now).stream()
        .map(row -> new CalibrationDrift.Reading(row.provenance().measuredAt(), row.voltsPerFullScale()))
        .toList();
  }

  private static Channel channelOf(String word) {
    requireWord("channel", word, CHANNELS);
    return Channel.values()[CHANNELS.indexOf(word)];
  }

  private static void requireWord(String field, String word, List<String> known) {
    if (word == null || !known.contains(word)) {
      throw new Refusal(
              400, "invalid-field", "The field '" + field + "' must be one of " + String.join(", ", known) + ".")
          .with("field", field)
          .with("choices", known);
    }
  }
}
