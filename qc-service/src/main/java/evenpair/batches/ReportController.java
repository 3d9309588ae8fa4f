package evenpair.batches;

import evenpair.print.PdfAnswer;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.Locale;
import org.springdoc.core.annotations.ParameterObject;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@Tag(name = "Batches")
class ReportController {
  private final BatchReports reports;

  ReportController(BatchReports reports) {
    this.reports = reports;
  }

  @GetMapping("/api/batches/{batch}/report")
  @AllowedFor(Caller.ENGINEER)
  @Operation(
      summary = "The batch's report, to be signed",
      description =
          "Yields with intervals, reasons, curves, capability, charts over production order,"
              + " stations, the limit set and its history. The same batch gives the same bytes.")
  @ApiResponse(
      responseCode = "200",
      description = "The document",
      content = @Content(mediaType = MediaType.APPLICATION_PDF_VALUE))
  @ApiResponse(responseCode = "404", description = "No such batch", content = @Content)
  @ApiResponse(
      responseCode = "422",
      description = "More than one product, tuning or limit set: choices names them",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  ResponseEntity<byte[]> report(
      @Parameter(example = "SW-2647") @PathVariable("batch") String batch,
      @ParameterObject Part part,
      @Parameter(description = "a4 or letter", example = "a4") @RequestParam(defaultValue = "a4")
          String paper,
      Locale locale) {
    return PdfAnswer.of(
        reports.report(batch, part, PdfAnswer.size(paper), locale), "batch-" + batch + ".pdf");
  }
}
