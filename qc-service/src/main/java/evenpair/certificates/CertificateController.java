package evenpair.certificates;

import evenpair.print.PdfAnswer;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.ExampleObject;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Locale;
import java.util.UUID;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
@Tag(name = "Certificates", description = "One printed page for a pair that passed")
class CertificateController {
  private static final String NOT_PASSED =
      """
      {"type": "/problems/not-passed", "title": "Not passed", "status": 409, "verdict": "FAIL",
       "detail": "Inspection 019aa3c1-… has no certificate: its verdict is FAIL. Right earpiece is 1.3 dB above its treble window …"}\
      """;
  private static final String NOT_YET_SEALED =
      """
      {"type": "/problems/not-yet-sealed", "title": "Not yet sealed", "status": 503,
       "detail": "The record is not yet sealed. Ask again in 2 s."}\
      """;

  private final Certificates certificates;

  CertificateController(Certificates certificates) {
    this.certificates = certificates;
  }

  @GetMapping("/api/inspections/{id}/certificate")
  @Operation(
      summary = "Certificate of one inspection",
      description =
          "One page, A4 or Letter. Waits a few seconds for the record's seal. The same record gives"
              + " the same bytes.")
  @ApiResponse(
      responseCode = "200",
      description = "The page",
      content = @Content(mediaType = MediaType.APPLICATION_PDF_VALUE))
  @ApiResponse(responseCode = "404", description = "No such inspection", content = @Content)
  @ApiResponse(
      responseCode = "409",
      description = "The verdict is not PASS: says why",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE,
              examples = @ExampleObject(NOT_PASSED)))
  @ApiResponse(
      responseCode = "503",
      description = "Not yet sealed; Retry-After says when to ask again",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE,
              examples = @ExampleObject(NOT_YET_SEALED)))
  ResponseEntity<byte[]> ofInspection(
      @PathVariable UUID id,
      @Parameter(description = "a4 or letter", example = "a4") @RequestParam(defaultValue = "a4")
          String paper,
      Locale locale,
      HttpServletResponse response) {
    return Papers.answer(
        () -> certificates.ofInspection(id, PdfAnswer.size(paper), locale), response);
  }

  @GetMapping("/api/units/{serial}/certificate")
  @Operation(
      summary = "Certificate of a unit in all its required tunings",
      description =
          "The page of the first required tuning, with a table of the verdicts in every tuning.")
  @ApiResponse(
      responseCode = "200",
      description = "The page",
      content = @Content(mediaType = MediaType.APPLICATION_PDF_VALUE))
  @ApiResponse(responseCode = "404", description = "No such unit", content = @Content)
  @ApiResponse(
      responseCode = "409",
      description = "A required tuning is missing or failed: names it",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  @ApiResponse(
      responseCode = "503",
      description = "Not yet sealed; Retry-After says when to ask again",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE,
              examples = @ExampleObject(NOT_YET_SEALED)))
  ResponseEntity<byte[]> ofUnit(
      @Parameter(example = "SG2-004217") @PathVariable String serial,
      @Parameter(description = "a4 or letter", example = "a4") @RequestParam(defaultValue = "a4")
          String paper,
      Locale locale,
      HttpServletResponse response) {
    return Papers.answer(
        () -> certificates.ofUnit(serial, PdfAnswer.size(paper), locale), response);
  }
}
