package evenpair.inspections;

import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Refusal;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.headers.Header;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Encoding;
import io.swagger.v3.oas.annotations.media.ExampleObject;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.net.URI;
import java.util.Locale;
import java.util.Optional;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RestController;

/** Takes captures. */
@RestController
@AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER})
@Tag(name = "Inspections")
class InspectionController {
  private static final int LONGEST_KEY = 255;

  private final Intake intake;
  private final InspectionSettings settings;

  InspectionController(Intake intake, InspectionSettings settings) {
    this.intake = intake;
    this.settings = settings;
  }

  /** What the multipart body holds; for the description only. */
  @Schema(name = "InspectionUpload")
  record Upload(
      @Schema(implementation = SubmissionDescription.class) Object inspection,
      @Schema(
              description =
                  "left capture: one-channel WAV, or a curve as CSV (frequency, level, optional phase)",
              type = "string",
              format = "binary")
          String left,
      @Schema(description = "right capture, likewise", type = "string", format = "binary")
          String right,
      @Schema(
              description =
                  "instead of left and right: WAV with two channels, left first; a third one carries the electrical drive, whose shape is taken out",
              type = "string",
              format = "binary")
          String both,
      @Schema(
              description =
                  "idle noise of the left channel, one-channel WAV of 1.25 s at least; needed where the limit set limits it",
              type = "string",
              format = "binary")
          String idleLeft,
      @Schema(
              description = "idle noise of the right channel, likewise",
              type = "string",
              format = "binary")
          String idleRight) {}

  @Schema(name = "InspectionRequest")
  record SubmissionDescription(
      @Schema(
              description = Names.RULE + ", narrowed by the product's pattern",
              example = "SG2-004217")
          String serial,
      @Schema(description = Names.RULE, example = "SW-2647") String batch,
      @Schema(example = "sedge-2") String product,
      @Schema(example = "plain") String tuning,
      @Schema(example = "bench-1") String station,
      @Schema(description = "name or badge", example = "op-17") String operator,
      @Schema(
              description = "1 upwards; above 1 it continues the unit's open inspection",
              defaultValue = "1",
              example = "1")
          int seating,
      @Schema(
              description = "production, rework, audit or return",
              defaultValue = "production",
              example = "production")
          String occasion,
      @Schema(description = "now if left out", example = "2026-11-25T07:00:00Z") String measuredAt,
      @Schema(description = "by the captures' sample rate if left out", example = "default")
          String stimulus,
      @Schema(description = "the left earpiece's own number, if it has one", nullable = true)
          String leftEarpiece,
      @Schema(nullable = true) String rightEarpiece) {}

  @PostMapping(path = "/api/inspections", consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
  @Operation(
      summary = "Judge a pair from its captures",
      description =
          "Stores one attempt and judges it. What decodes but cannot be judged is 201 with lastAttempt INVALID, its bytes kept;"
              + " what cannot be decoded or names something unknown is 4xx and stores nothing. An open inspection of the same"
              + " unit, tuning and occasion is continued.",
      requestBody =
          @RequestBody(
              content =
                  @Content(
                      mediaType = MediaType.MULTIPART_FORM_DATA_VALUE,
                      schema = @Schema(implementation = Upload.class),
                      encoding = {
                        @Encoding(name = "inspection", contentType = "application/json"),
                        @Encoding(name = "left", contentType = "audio/wav, text/csv"),
                        @Encoding(name = "right", contentType = "audio/wav, text/csv"),
                        @Encoding(name = "both", contentType = "audio/wav"),
                        @Encoding(name = "idleLeft", contentType = "audio/wav"),
                        @Encoding(name = "idleRight", contentType = "audio/wav")
                      })))
  @ApiResponse(
      responseCode = "201",
      description = "An attempt was stored.",
      headers = @Header(name = "Location", description = "the inspection"),
      content =
          @Content(
              mediaType = MediaType.APPLICATION_JSON_VALUE,
              schema = @Schema(implementation = InspectionJson.class),
              examples =
                  @ExampleObject(name = "a failed window", value = InspectionExamples.FAILED)))
  @ApiResponse(
      responseCode = "200",
      description =
          "An equal request with this Idempotency-Key was answered before; this is that answer.",
      headers = @Header(name = "Idempotent-Replay", description = "true"),
      content =
          @Content(
              mediaType = MediaType.APPLICATION_JSON_VALUE,
              schema = @Schema(implementation = InspectionJson.class)))
  @ApiResponse(
      responseCode = "409",
      description =
          "It comes at the wrong time: already judged, another seating is expected, or the key was used for another request.",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE,
              examples = @ExampleObject(value = InspectionExamples.ALREADY_JUDGED)))
  @ApiResponse(
      responseCode = "422",
      description = "A file cannot be decoded, or product, tuning, station or stimulus is unknown.",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE,
              examples = @ExampleObject(value = InspectionExamples.UNREADABLE)))
  @ApiResponse(
      responseCode = "507",
      description = "The captures could not be made durable; nothing was stored.",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  ResponseEntity<String> post(
      @Parameter(
              description = "any text of 1 to 255 characters; scope is the station, kept 90 days")
          @RequestHeader(name = "Idempotency-Key", required = false)
          String key,
      @Parameter(hidden = true) HttpServletRequest request,
      @Parameter(hidden = true) Locale locale)
      throws IOException, ServletException {
    requireFit(key);
    SentParts parts = SentParts.of(request.getParts(), settings.curveMaxBytes());
    Answer answer = intake.take(parts, Optional.ofNullable(key), locale);
    URI self = URI.create("/api/inspections/" + answer.inspection());
    return answer.replay()
        ? ResponseEntity.ok()
            .location(self)
            .header("Idempotent-Replay", "true")
            .contentType(MediaType.APPLICATION_JSON)
            .body(answer.json())
        : ResponseEntity.created(self).contentType(MediaType.APPLICATION_JSON).body(answer.json());
  }

  private static void requireFit(String key) {
    if (key != null && (key.isBlank() || key.length() > LONGEST_KEY)) {
      throw new Refusal(
              400,
              "invalid-idempotency-key",
              "The header 'Idempotency-Key' must have 1 to 255 characters.")
          .with("field", "Idempotency-Key")
          .with("expected", "1 to 255 characters");
    }
  }
}
