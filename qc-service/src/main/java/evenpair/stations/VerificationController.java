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
import java.io.IOException;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
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
@Tag(name = "stations")
class VerificationController {
  private final StationRegister register;
  private final Verifications verifications;
  private final Clearings clearings;
  private final VerificationDescriber describer;
  private final JsonPart json;
  private final Clock clock;

  VerificationController(
      StationRegister register,
      Verifications verifications,
      Clearings clearings,
      VerificationDescriber describer,
      JsonPart json,
      Clock clock) {
    this.register = register;
    this.verifications = verifications;
    this.clearings = clearings;
    this.describer = describer;
    this.json = json;
    this.clock = clock;
  }

  @AllowedFor(Caller.ENGINEER)
  @PostMapping(path = "/reference-units", consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
  @ResponseStatus(HttpStatus.CREATED)
  @ApiResponse(responseCode = "201", description = "Stored", useReturnTypeSchema = true)
  @ApiResponse(
      responseCode = "409",
      description = "The station cannot be trusted with captures now",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  @ApiResponse(
      responseCode = "422",
      description = "Parts that cannot be used (the part is named)",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  @Operation(
      summary = "Store a reference unit's certified curves",
      description =
          "Parts `left` and `right`: curves as text (dB SPL at the limit set's drive, taken as certified), or captures of a"
              + " stimulus at a moment at which the station is trusted. The newest of a serial number counts.",
      requestBody =
          @io.swagger.v3.oas.annotations.parameters.RequestBody(
              content =
                  @Content(
                      mediaType = MediaType.MULTIPART_FORM_DATA_VALUE,
                      schema = @Schema(implementation = ReferenceUnitForm.class))))
  TrustViews.ReferenceUnit certify(@PathVariable String station, HttpServletRequest request)
      throws IOException, ServletException {
    FormParts parts = FormParts.of(request, List.of("unit", "left", "right"));
    byte[] unit = parts.one("unit", "a JSON object with serial, product, tuning and operator");
    ReferenceUnitRow row =
        verifications.certify(
            station, json.read("unit", unit, VerificationRequests.ReferenceUnit.class), parts);
    return describer.describe(station, row, clock.instant());
  }

  @AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
  @GetMapping("/reference-units")
  @Operation(summary = "The station's reference units", description = "Without their curves.")
  TrustViews.ReferenceUnits referenceUnits(@PathVariable String station) {
    return describer.references(register.require(station), clock.instant());
  }

  @PostMapping(path = "/verifications", consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
  @ResponseStatus(HttpStatus.CREATED)
  @ApiResponse(
      responseCode = "201",
      description = "Stored, passed or failed; a failed one blocks the station",
      useReturnTypeSchema = true)
  @ApiResponse(
      responseCode = "404",
      description = "Unknown station, tuning or reference unit",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  @ApiResponse(
      responseCode = "409",
      description = "A calibration, the correction or the certified curves are missing or expired",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  @Operation(
      summary = "Verify the station by a reference unit",
      description =
          "Each region's mean of measured less certified level, both smoothed, must stay within the active limit set's"
              + " `verification-db` on both channels; else the station may not judge until an engineer clears it. Holds for 12"
              + " hours unless set otherwise.",
      requestBody =
          @io.swagger.v3.oas.annotations.parameters.RequestBody(
              content =
                  @Content(
                      mediaType = MediaType.MULTIPART_FORM_DATA_VALUE,
                      schema = @Schema(implementation = VerificationForm.class))))
  TrustViews.Verification verify(@PathVariable String station, HttpServletRequest request)
      throws IOException, ServletException {
    FormParts parts = FormParts.of(request, List.of("verification", "left", "right"));
    byte[] verification =
        parts.one("verification", "a JSON object with product, tuning, referenceUnit, operator");
    VerificationRow row =
        verifications.verify(
            station,
            json.read("verification", verification, VerificationRequests.Verification.class),
            parts);
    return describer.describe(station, row, clock.instant());
  }

  @AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
  @GetMapping("/verifications")
  @Operation(
      summary = "Verifications and their trend",
      description =
          "The newest 100, newest first, and for each certified curve, channel and region a control chart of single values and"
              + " moving ranges of the region means.")
  TrustViews.Verifications verifications(
      @PathVariable String station,
      @RequestParam(required = false) String product,
      @RequestParam(required = false) String tuning) {
    return describer.list(register.require(station), product, tuning, clock.instant());
  }

  @AllowedFor(Caller.ENGINEER)
  @PostMapping("/clearing")
  @ResponseStatus(HttpStatus.CREATED)
  @ApiResponse(responseCode = "201", description = "Cleared", useReturnTypeSchema = true)
  @ApiResponse(
      responseCode = "409",
      description = "Nothing blocks the station",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  @Operation(
      summary = "Let a blocked station judge again",
      description = "By an engineer, for all that blocks it now; who, when and why is sealed.")
  TrustViews.Clearings clear(
      @PathVariable String station, @Valid @RequestBody VerificationRequests.Clearing request) {
    return new TrustViews.Clearings(
        clearings.clear(station, request).stream().map(describer::describe).toList());
  }

  @AllowedFor(Caller.ENGINEER)
  @PostMapping("/verifications/{verification}/clearing")
  @ResponseStatus(HttpStatus.CREATED)
  @ApiResponse(responseCode = "201", description = "Cleared", useReturnTypeSchema = true)
  @ApiResponse(
      responseCode = "409",
      description = "It passed, or has been cleared",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  @Operation(summary = "Clear one failed verification")
  TrustViews.Clearing clear(
      @PathVariable String station,
      @PathVariable UUID verification,
      @Valid @RequestBody VerificationRequests.Clearing request) {
    return describer.describe(clearings.clear(station, verification, request));
  }

  /** For the API's description. */
  record ReferenceUnitForm(
      VerificationRequests.ReferenceUnit unit,
      @Schema(type = "string", format = "binary", description = "curve or mono WAV") byte[] left,
      @Schema(type = "string", format = "binary", description = "curve or mono WAV")
          byte[] right) {}

  /** For the API's description. */
  record VerificationForm(
      VerificationRequests.Verification verification,
      @Schema(type = "string", format = "binary", description = "mono WAV, or a curve") byte[] left,
      @Schema(type = "string", format = "binary", description = "mono WAV, or a curve")
          byte[] right) {}
}
