package evenpair.stations;

import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.FormParts;
import evenpair.web.JsonPart;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.ArraySchema;
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
import java.util.Locale;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

@RestController
@AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER})
@RequestMapping("/api/stations/{station}")
@Tag(name = "stations")
class CalibrationController {
  private final Calibrations calibrations;
  private final Corrections corrections;
  private final IdleFloors idleFloors;
  private final StationDescriber describer;
  private final JsonPart json;
  private final Clock clock;

  CalibrationController(
      Calibrations calibrations,
      Corrections corrections,
      IdleFloors idleFloors,
      StationDescriber describer,
      JsonPart json,
      Clock clock) {
    this.calibrations = calibrations;
    this.corrections = corrections;
    this.idleFloors = idleFloors;
    this.describer = describer;
    this.json = json;
    this.clock = clock;
  }

  @PostMapping(path = "/calibrations", consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
  @ResponseStatus(HttpStatus.CREATED)
  @ApiResponse(responseCode = "201", description = "Stored", useReturnTypeSchema = true)
  @ApiResponse(
      responseCode = "404",
      description = "Unknown station",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  @Operation(
      summary = "Calibrate one channel's microphone by a sound calibrator's tone",
      description =
          "The tone's steady part is fitted by a sine of free frequency; pascal per full scale = √2 · stated pressure"
              + " (r.m.s.) / fitted peak. Holds for 12 hours unless set otherwise. `change` compares with the calibration before.",
      requestBody =
          @io.swagger.v3.oas.annotations.parameters.RequestBody(
              content =
                  @Content(
                      mediaType = MediaType.MULTIPART_FORM_DATA_VALUE,
                      schema = @Schema(implementation = CalibrationForm.class))))
  @ApiResponse(
      responseCode = "422",
      description =
          "The recording is clipped, weak, short, unsteady, distorted or of another frequency",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  Views.Microphone calibrate(
      @PathVariable String station, HttpServletRequest request, Locale locale)
      throws IOException, ServletException {
    FormParts parts = FormParts.of(request, List.of("calibration", "tone"));
    byte[] calibration =
        parts.one("calibration", "a JSON object with channel, earSimulator, levelDb, …");
    byte[] tone = parts.one("tone", "a mono WAV of the calibrator's tone");
    MicrophoneCalibrationRow row =
        calibrations.microphone(
            station, json.read("calibration", calibration, Requests.Calibration.class), tone);
    return describer.describe(station, row, clock.instant(), locale);
  }

  @PostMapping("/output-calibrations")
  @ResponseStatus(HttpStatus.CREATED)
  @ApiResponse(responseCode = "201", description = "Stored", useReturnTypeSchema = true)
  @ApiResponse(
      responseCode = "404",
      description = "Unknown station",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  @Operation(
      summary = "Calibrate the output by a voltmeter's reading of a tone",
      description =
          "Volts per full scale = √2 · reading / 10^(toneDbfs/20). Holds for 12 hours unless set otherwise.")
  @ApiResponse(
      responseCode = "422",
      description = "No such output gives that reading",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  Views.Output calibrateOutput(
      @PathVariable String station,
      @Valid @RequestBody Requests.OutputCalibration request,
      Locale locale) {
    return describer.describe(
        station, calibrations.output(station, request), clock.instant(), locale);
  }

  @PostMapping(path = "/corrections", consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
  @ResponseStatus(HttpStatus.CREATED)
  @ApiResponse(responseCode = "201", description = "Stored", useReturnTypeSchema = true)
  @ApiResponse(
      responseCode = "404",
      description = "Unknown station",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  @Operation(
      summary = "Store the station's left/right correction from a swap study",
      description =
          "The reference pair is measured as marked and with its earpieces swapped, at least three seatings each. The"
              + " parts `markedLeft`, `markedRight`, `swappedLeft`, `swappedRight` are repeated in seating order; left and right are the"
              + " station's simulator channels, whichever earpiece sits on them. Correction = half the sum of the two mean left − right"
              + " curves. Holds for 90 days unless set otherwise.",
      requestBody =
          @io.swagger.v3.oas.annotations.parameters.RequestBody(
              content =
                  @Content(
                      mediaType = MediaType.MULTIPART_FORM_DATA_VALUE,
                      schema = @Schema(implementation = CorrectionForm.class))))
  @ApiResponse(
      responseCode = "409",
      description = "A microphone's calibration is missing or expired",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  @ApiResponse(
      responseCode = "422",
      description = "Captures that cannot be analysed (the part is named) or do not agree",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  Views.Correction correct(@PathVariable String station, HttpServletRequest request)
      throws IOException, ServletException {
    FormParts parts =
        FormParts.of(
            request,
            List.of("correction", "markedLeft", "markedRight", "swappedLeft", "swappedRight"));
    byte[] correction = parts.one("correction", "a JSON object with referenceUnit, operator, …");
    CorrectionRow row =
        corrections.correct(
            station, json.read("correction", correction, Requests.Correction.class), parts);
    return describer.describe(station, row, clock.instant());
  }

  @PostMapping(path = "/idle-floors", consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
  @ResponseStatus(HttpStatus.CREATED)
  @ApiResponse(responseCode = "201", description = "Stored", useReturnTypeSchema = true)
  @ApiResponse(
      responseCode = "409",
      description = "A microphone's calibration is missing or expired",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  @Operation(
      summary = "Measure the station's own noise",
      description =
          "Recordings of both channels with nothing connected, 1.25 s or more; A-weighted level re 20 µPa. A unit's idle"
              + " noise is told down to this. Holds for 31 days unless set otherwise.",
      requestBody =
          @io.swagger.v3.oas.annotations.parameters.RequestBody(
              content =
                  @Content(
                      mediaType = MediaType.MULTIPART_FORM_DATA_VALUE,
                      schema = @Schema(implementation = IdleFloorForm.class))))
  TrustViews.IdleFloor idleFloor(@PathVariable String station, HttpServletRequest request)
      throws IOException, ServletException {
    FormParts parts = FormParts.of(request, List.of("idleFloor", "left", "right"));
    byte[] idleFloor = parts.one("idleFloor", "a JSON object with operator");
    IdleFloorRow row =
        idleFloors.add(station, json.read("idleFloor", idleFloor, Requests.IdleFloor.class), parts);
    return describer.describe(station, row, clock.instant());
  }

  /** For the API's description. */
  record IdleFloorForm(
      Requests.IdleFloor idleFloor,
      @Schema(type = "string", format = "binary", description = "mono WAV") byte[] left,
      @Schema(type = "string", format = "binary", description = "mono WAV") byte[] right) {}

  /** For the API's description. */
  record CalibrationForm(
      Requests.Calibration calibration,
      @Schema(
              type = "string",
              format = "binary",
              description = "mono WAV of the calibrator's tone, 2 s or more")
          byte[] tone) {}

  /** For the API's description. */
  record CorrectionForm(
      Requests.Correction correction,
      @ArraySchema(
              schema =
                  @Schema(
                      type = "string",
                      format = "binary",
                      description = "mono WAV, one a seating"))
          List<byte[]> markedLeft,
      @ArraySchema(
              schema =
                  @Schema(
                      type = "string",
                      format = "binary",
                      description = "mono WAV, one a seating"))
          List<byte[]> markedRight,
      @ArraySchema(
              schema =
                  @Schema(
                      type = "string",
                      format = "binary",
                      description = "mono WAV, one a seating"))
          List<byte[]> swappedLeft,
      @ArraySchema(
              schema =
                  @Schema(
                      type = "string",
                      format = "binary",
                      description = "mono WAV, one a seating"))
          List<byte[]> swappedRight) {}
}
