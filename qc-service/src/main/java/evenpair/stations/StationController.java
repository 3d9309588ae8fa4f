package evenpair.stations;

import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import java.net.URI;
import java.time.Clock;
import java.time.Instant;
import java.util.Locale;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

@RestController
@AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
@RequestMapping("/api/stations")
@Tag(
    name = "stations",
    description = "Stations of the line and the calibration of both ends of their chains")
class StationController {
  private final StationRegister register;
  private final StationDescriber describer;
  private final DriftCharts drift;
  private final Clock clock;

  StationController(
      StationRegister register, StationDescriber describer, DriftCharts drift, Clock clock) {
    this.register = register;
    this.describer = describer;
    this.drift = drift;
    this.clock = clock;
  }

  @GetMapping
  @Operation(
      summary = "Every station at a glance",
      description = "By name; corrections without their curves.")
  Views.Stations list(Locale locale) {
    Instant now = clock.instant();
    return new Views.Stations(
        register.all(now).stream()
            .map(newest -> describer.summarise(newest, now, locale))
            .toList());
  }

  @GetMapping("/{station}")
  @Operation(
      summary = "One station",
      description = "Its newest calibrations and correction, and what keeps it from being ready.")
  @ApiResponse(responseCode = "200", useReturnTypeSchema = true)
  @ApiResponse(
      responseCode = "404",
      description = "Unknown station; `choices` are the known names",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  Views.Station get(@PathVariable String station, Locale locale) {
    Instant now = clock.instant();
    return describer.describe(register.newest(station, now), now, locale);
  }

  @GetMapping("/{station}/drift")
  @Operation(
      summary = "How a station's calibrations move",
      description =
          "Each microphone's and the output's newest 100 calibrations, oldest first, as the level that full scale stands for, with a"
              + " control chart of single values and moving ranges once there are eight.")
  @ApiResponse(responseCode = "200", useReturnTypeSchema = true)
  TrustViews.Drifts drift(@PathVariable String station) {
    return drift.of(register.require(station));
  }

  @AllowedFor({Caller.ENGINEER, Caller.ADMINISTRATOR})
  @PutMapping("/{station}")
  @Operation(
      summary = "Make a station, or change its note",
      description = "The name is 1 to 32 of a–z, 0–9 and -. Without a note the present one stays.")
  @ApiResponse(responseCode = "201", description = "Made", useReturnTypeSchema = true)
  @ApiResponse(responseCode = "200", description = "Was there already", useReturnTypeSchema = true)
  ResponseEntity<Views.Station> put(
      @PathVariable String station,
      @Valid @RequestBody(required = false) Requests.Station request,
      Locale locale) {
    boolean isNew = register.put(station, request == null ? null : request.note());
    Views.Station view = get(station, locale);
    return isNew
        ? ResponseEntity.created(URI.create("/api/stations/" + station)).body(view)
        : ResponseEntity.ok(view);
  }
}
