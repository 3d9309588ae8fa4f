package evenpair.certificates;

import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Locale;
import java.util.UUID;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

@RestController
@AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
@Tag(name = "Labels and slips", description = "Small papers that go with a pair")
class SmallPaperController {
  /** A page of this service may show the paper in a frame of its own, to print it from there. */
  private static final String FRAMED_BY_US = "default-src 'self'; frame-ancestors 'self'";

  private final SmallPapers papers;

  SmallPaperController(SmallPapers papers) {
    this.papers = papers;
  }

  @GetMapping("/api/inspections/{id}/label")
  @Operation(
      summary = "Label of a pair that passed",
      description =
          "50 mm × 30 mm, black: Code 128 of the serial number, and a QR code that leads to the"
              + " public page where there is one, else holds the serial number.")
  @ApiResponse(
      responseCode = "200",
      description = "The label",
      content = @Content(mediaType = MediaType.APPLICATION_PDF_VALUE))
  @ApiResponse(responseCode = "404", description = "No such inspection", content = @Content)
  @ApiResponse(
      responseCode = "409",
      description = "The verdict is not PASS: says why",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  ResponseEntity<byte[]> label(@PathVariable UUID id, Locale locale, HttpServletResponse response) {
    return framed(Papers.answer(() -> papers.label(id, locale), response));
  }

  @GetMapping("/api/inspections/{id}/rework-slip")
  @Operation(
      summary = "Slip that goes with a failed pair to rework",
      description = "A6, black: the reasons as sentences, where, and what to do by the first.")
  @ApiResponse(
      responseCode = "200",
      description = "The slip",
      content = @Content(mediaType = MediaType.APPLICATION_PDF_VALUE))
  @ApiResponse(responseCode = "404", description = "No such inspection", content = @Content)
  @ApiResponse(
      responseCode = "409",
      description = "The verdict is not FAIL: says why",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  ResponseEntity<byte[]> reworkSlip(
      @PathVariable UUID id, Locale locale, HttpServletResponse response) {
    return framed(Papers.answer(() -> papers.reworkSlip(id, locale), response));
  }

  private static ResponseEntity<byte[]> framed(ResponseEntity<byte[]> paper) {
    return ResponseEntity.ok()
        .headers(paper.getHeaders())
        .header("Content-Security-Policy", FRAMED_BY_US)
        .header("X-Frame-Options", "SAMEORIGIN")
        .body(paper.getBody());
  }
}
