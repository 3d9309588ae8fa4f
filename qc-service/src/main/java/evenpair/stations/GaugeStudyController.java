package evenpair.stations;

import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.FormParts;
import evenpair.web.JsonPart;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import java.io.IOException;
import java.net.URI;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

@RestController
@AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER})
@RequestMapping("/api/stations/{station}")
@Tag(
    name = "gauge studies",
    description = "How far the same unit comes out the same, and what a number is worth")
class GaugeStudyController {
  private final StationRegister register;
  private final GaugeStudies studies;
  private final GaugeDescriber describer;
  private final LimitsLookup limits;
  private final JsonPart json;
  private final Clock clock;

  GaugeStudyController(
      StationRegister register,
      GaugeStudies studies,
      GaugeDescriber describer,
      LimitsLookup limits,
      JsonPart json,
      Clock clock) {
    this.register = register;
    this.studies = studies;
    this.describer = describer;
    this.limits = limits;
    this.json = json;
    this.clock = clock;
  }

  @AllowedFor(Caller.ENGINEER)
  @PostMapping("/gauge-studies")
  @ApiResponse(responseCode = "201", description = "Planned", useReturnTypeSchema = true)
  @ApiResponse(
      responseCode = "404",
      description = "Unknown station, product or tuning",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  @ApiResponse(
      responseCode = "422",
      description = "Both or neither kind of appraisers, or something named twice",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  @Operation(
      summary = "Plan a gauge study",
      description =
          "Each part is mounted and measured by each operator, or on each station, the same number of times. Ten parts, three"
              + " operators, three seatings are usual; two of each are the least.")
  ResponseEntity<GaugeViews.Study> plan(
      @PathVariable String station, @Valid @RequestBody GaugeRequests.Plan plan) {
    GaugeStudyRow study = studies.plan(station, plan);
    return ResponseEntity.created(
            URI.create("/api/stations/" + station + "/gauge-studies/" + study.getId()))
        .body(describer.describe(study, clock.instant()));
  }

  @AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
  @GetMapping("/gauge-studies")
  @Operation(
      summary = "The station's gauge studies",
      description = "Newest first, without their analyses.")
  GaugeViews.Studies list(@PathVariable String station) {
    return describer.list(register.require(station), clock.instant());
  }

  @AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
  @GetMapping("/gauge-studies/{study}")
  @Operation(
      summary = "One gauge study",
      description =
          "How far it is, and once complete its analysis of variance by region and by grid point, with the smoothing, regions"
              + " and alignment band of the limit set that is active now.")
  GaugeViews.Study get(@PathVariable String station, @PathVariable UUID study) {
    return describer.describe(studies.require(station, study), clock.instant());
  }

  @PostMapping(
      path = "/gauge-studies/{study}/captures",
      consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
  @ResponseStatus(HttpStatus.CREATED)
  @ApiResponse(
      responseCode = "201",
      description = "Stored; the answer says what is still missing",
      useReturnTypeSchema = true)
  @ApiResponse(
      responseCode = "409",
      description = "The seating has been measured, or the station cannot be trusted now",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  @ApiResponse(
      responseCode = "422",
      description = "Not in the plan, sent before, or it cannot be used (the part is named)",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  @Operation(
      summary = "Add one measurement to a gauge study",
      description =
          "In any order, over any time; a stored measurement is never replaced. Parts `left` and `right` as for an inspection.",
      requestBody =
          @io.swagger.v3.oas.annotations.parameters.RequestBody(
              content =
                  @Content(
                      mediaType = MediaType.MULTIPART_FORM_DATA_VALUE,
                      schema = @Schema(implementation = CaptureForm.class))))
  GaugeViews.Study collect(
      @PathVariable String station, @PathVariable UUID study, HttpServletRequest request)
      throws IOException, ServletException {
    FormParts parts = FormParts.of(request, List.of("capture", "left", "right"));
    byte[] capture = parts.one("capture", "a JSON object with part, operator and seating");
    GaugeStudyRow row =
        studies.collect(
            station, study, json.read("capture", capture, GaugeRequests.Capture.class), parts);
    return describer.describe(row, clock.instant());
  }

  @AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
  @GetMapping("/budget")
  @ApiResponse(responseCode = "200", useReturnTypeSchema = true)
  @ApiResponse(
      responseCode = "409",
      description = "There is none, and why",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  @Operation(
      summary = "The station's uncertainty budget for one tuning",
      description =
          "From its newest complete gauge study, the calibrator's certificate and the left/right correction, as they hold now.")
  GaugeViews.Budget budget(
      @PathVariable String station,
      @RequestParam String product,
      @RequestParam String tuning,
      @RequestParam(required = false) @Min(1) @Max(20) Integer seatings) {
    Instant now = clock.instant();
    StationRow row = register.require(station);
    return describer.budget(row, limits.activeAt(product, tuning, now), seatings, now);
  }

  /** For the API's description. */
  record CaptureForm(
      GaugeRequests.Capture capture,
      @Schema(type = "string", format = "binary", description = "mono WAV, or a curve") byte[] left,
      @Schema(type = "string", format = "binary", description = "mono WAV, or a curve")
          byte[] right) {}
}
