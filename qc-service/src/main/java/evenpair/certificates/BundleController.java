package evenpair.certificates;

import evenpair.certificates.Bundles.Bundle;
import evenpair.print.PaperSize;
import evenpair.print.PdfAnswer;
import evenpair.print.PdfJoin;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Refusal;
import evenpair.web.jobs.Jobs;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;

@RestController
@AllowedFor({Caller.OPERATOR, Caller.ENGINEER})
@Tag(name = "Batch printing", description = "Every certificate of a batch as one document")
class BundleController {
  private final BundleDesk desk;
  private final Bundles bundles;
  private final Jobs jobs;

  BundleController(BundleDesk desk, Bundles bundles, Jobs jobs) {
    this.desk = desk;
    this.bundles = bundles;
    this.jobs = jobs;
  }

  @PostMapping("/api/batches/{batch}/certificates")
  @Operation(
      summary = "Print the certificates of a batch's units that passed",
      description =
          "Long work: the answer names a job; its result is the bundle. Asked again while it is at"
              + " work, the answer names the same job.")
  @ApiResponse(responseCode = "202", description = "Started")
  @ApiResponse(responseCode = "404", description = "No such batch", content = @Content)
  @ApiResponse(responseCode = "409", description = "No unit has passed", content = @Content)
  @ApiResponse(
      responseCode = "422",
      description = "More than one product: choices names them",
      content = @Content)
  ResponseEntity<Map<String, Object>> print(
      @Parameter(example = "SW-2647") @PathVariable String batch,
      @RequestBody Order order,
      Locale locale) {
    PaperSize paper = PdfAnswer.size(order.paper() == null ? "a4" : order.paper());
    return jobs.accepted(desk.print(batch, order.product(), paper, locale));
  }

  @GetMapping("/api/certificate-bundles/{id}")
  @Operation(summary = "What was printed, and which units were left out and why")
  @ApiResponse(responseCode = "404", description = "No such bundle", content = @Content)
  View bundle(@PathVariable UUID id) {
    Bundle bundle = found(id);
    int pages = bundles.pages(id);
    return new View(
        id,
        bundle.batch(),
        bundle.product(),
        bundle.paper(),
        bundle.job(),
        pages,
        bundles.leftOut(id).stream()
            .map(unit -> new LeftOut(unit.serial(), unit.leftOut()))
            .toList(),
        pages == 0
            ? Map.of("job", "/api/jobs/" + bundle.job())
            : Map.of(
                "job",
                "/api/jobs/" + bundle.job(),
                "pdf",
                "/api/certificate-bundles/" + id + "/certificates.pdf"));
  }

  @GetMapping("/api/certificate-bundles/{id}/certificates.pdf")
  @Operation(summary = "The certificates, one page a unit")
  @ApiResponse(
      responseCode = "200",
      description = "The document",
      content = @Content(mediaType = MediaType.APPLICATION_PDF_VALUE))
  @ApiResponse(responseCode = "404", description = "No such bundle", content = @Content)
  @ApiResponse(
      responseCode = "409",
      description = "Not printed to the end, or nothing in it",
      content = @Content)
  void pdf(@PathVariable UUID id, HttpServletResponse response) throws IOException {
    Bundle bundle = found(id);
    List<Integer> parts = bundles.parts(id);
    boolean done = jobs.find(bundle.job()).map(job -> job.state().equals("done")).orElse(false);
    if (!done || parts.isEmpty()) {
      throw new Refusal(
          409,
          done ? "nothing-printed" : "not-finished",
          done
              ? "No unit of this print has a certificate."
              : "These certificates are not printed to the end.");
    }
    response.setContentType(MediaType.APPLICATION_PDF_VALUE);
    response.setHeader(
        HttpHeaders.CONTENT_DISPOSITION,
        ContentDisposition.attachment()
            .filename("certificates-" + bundle.batch() + ".pdf", StandardCharsets.UTF_8)
            .build()
            .toString());
    Iterator<byte[]> documents = parts.stream().map(part -> bundles.part(id, part)).iterator();
    PdfJoin.join(documents, response.getOutputStream());
  }

  private Bundle found(UUID id) {
    return bundles
        .find(id)
        .orElseThrow(() -> new Refusal(404, "unknown-bundle", "There is no bundle " + id + "."));
  }

  /**
   * @param product null: the batch's only one
   * @param paper null: a4
   */
  record Order(@Schema(example = "sedge-2") String product, @Schema(example = "a4") String paper) {}

  record LeftOut(String serial, String reason) {}

  record View(
      UUID id,
      String batch,
      String product,
      String paper,
      UUID job,
      int pages,
      List<LeftOut> leftOut,
      Map<String, String> links) {}
}
