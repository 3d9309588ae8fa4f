package evenpair.traceability;

import evenpair.print.PdfAnswer;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.Locale;
import java.util.UUID;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@Tag(name = "Outside reports")
class DossierController {
  private final Dossiers dossiers;

  DossierController(Dossiers dossiers) {
    this.dossiers = dossiers;
  }

  @GetMapping("/api/units/{serial}/dossier")
  @AllowedFor(Caller.ENGINEER)
  @Operation(
      summary = "The answer to a report of mismatch, as a PDF",
      description =
          "The question, the answer, both measurements on one plot with their uncertainties, how it was measured, the"
              + " limit's history and the record codes. Without a report: the record alone.")
  @ApiResponse(
      responseCode = "200",
      description = "The document",
      content = @Content(mediaType = MediaType.APPLICATION_PDF_VALUE))
  ResponseEntity<byte[]> dossier(
      @PathVariable String serial,
      @Parameter(description = "An outside report; the newest one if missing")
          @RequestParam(required = false)
          UUID report,
      @Parameter(description = "true: without operators, approvers and who published it")
          @RequestParam(name = "public", defaultValue = "false")
          boolean hidden,
      @Parameter(description = "a4 or letter") @RequestParam(defaultValue = "a4") String paper,
      Locale locale) {
    return PdfAnswer.of(
        dossiers.dossier(serial, report, hidden, PdfAnswer.size(paper), locale),
        "dossier-" + serial + ".pdf");
  }
}
