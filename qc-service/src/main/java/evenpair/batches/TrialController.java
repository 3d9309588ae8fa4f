package evenpair.batches;

import evenpair.batches.TrialJson.TrialView;
import evenpair.batches.Trials.Prepared;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.ExampleObject;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;
import org.springdoc.core.annotations.ParameterObject;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@Tag(name = "Batches")
class TrialController {
  /** As long as a limit set may be, and one byte more, so that a longer one is told. */
  private static final int MOST_BYTES = 1 << 20;

  private static final String EXAMPLE =
      """
      product: sedge-2
      tuning: plain
      version: 4
      ear-simulator: IEC 60318-4
      golden: plain-golden.csv
      drive: {mv-rms: 180}
      smoothing: 1/12 octave
      level: {band-hz: [300, 3000], tolerance-db: [-1.5, 1.5], balance-db: 1}
      regions:
        - {name: bass, hz: [20, 200], window-db: [-1.5, 1.5], match-db: 1}
        - {name: mid, hz: [200, 5000], window-db: [-1, 1], match-db: 0.8}
        - {name: treble, hz: [5000, 16000], window-db: [[-2, 2], [-4, 4]], match-db: [2, 4.5]}
      polarity: same
      decision: {rule: simple}
      """;

  private final Trials trials;
  private final TrialCurves curves;

  TrialController(Trials trials, TrialCurves curves) {
    this.trials = trials;
    this.curves = curves;
  }

  @PostMapping("/api/batches/{batch}/trials")
  @AllowedFor(Caller.ENGINEER)
  @Operation(
      summary = "Tries a limit set on recorded units; stores nothing",
      description =
          "The set in YAML as the body; without a body the version asked for, or the active one."
              + " Judges the stored curves by the very rules of production: the active set gives"
              + " every recorded verdict again. Each unit counts once, by its first closed"
              + " inspection.",
      requestBody =
          @io.swagger.v3.oas.annotations.parameters.RequestBody(
              content =
                  @Content(
                      mediaType = "application/yaml",
                      schema = @Schema(type = "string"),
                      examples = @ExampleObject(EXAMPLE))))
  @ApiResponse(responseCode = "200", description = "What would have become of the units")
  @ApiResponse(responseCode = "404", description = "No such batch or version", content = @Content)
  @ApiResponse(
      responseCode = "422",
      description =
          "A set with problems (each with line and column), one for another drive or ear simulator,"
              + " or batches that have more than one product or tuning",
      content = @Content)
  TrialView trial(
      @Parameter(example = "SW-2647") @PathVariable("batch") String batch,
      @ParameterObject @ModelAttribute TrialRequest request,
      @Parameter(example = "3", description = "a stored version, where there is no body")
          @RequestParam(name = "version", required = false)
          Integer version,
      @Parameter(hidden = true) InputStream body,
      Locale locale)
      throws IOException {
    Prepared prepared = trials.prepare(batch, request, body.readNBytes(MOST_BYTES), version);
    return trials.view(prepared, request.prices(), locale);
  }

  @GetMapping(
      path = "/api/batches/{batch}/curves.bin",
      produces = MediaType.APPLICATION_OCTET_STREAM_VALUE)
  @AllowedFor(Caller.ENGINEER)
  @Operation(
      summary = "Everything that a screen needs to try limits by itself, in one answer",
      description =
          "Little-endian: 4 bytes length of the head, the head in JSON (padded with spaces to a"
              + " multiple of 4), then 32-bit floats, 241 a unit in the order of the head's rows:"
              + " left deviation, right deviation, left − right, dB; NaN where absent.")
  @ApiResponse(
      responseCode = "200",
      description = "Head and curves",
      content = @Content(mediaType = MediaType.APPLICATION_OCTET_STREAM_VALUE))
  ResponseEntity<byte[]> curves(
      @Parameter(example = "SW-2647") @PathVariable("batch") String batch,
      @ParameterObject @ModelAttribute TrialRequest request,
      @Parameter(
              example = "3",
              description =
                  "version whose golden response, smoothing and alignment band the curves are laid"
                      + " on; the active one without it")
          @RequestParam(name = "version", required = false)
          Integer version) {
    Prepared prepared = trials.prepare(batch, request, new byte[0], version);
    return ResponseEntity.ok()
        .contentType(MediaType.APPLICATION_OCTET_STREAM)
        .body(curves.of(prepared));
  }
}
