package evenpair.traceability;

import evenpair.access.SignedIn;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.FormParts;
import evenpair.web.JsonPart;
import evenpair.web.Texts;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RequestMapping("/api/units/{serial}/outside-reports")
@AllowedFor(Caller.ENGINEER)
@Tag(name = "Outside reports", description = "Somebody else's measurement of a unit")
class OutsideReportController {
  private static final byte[] NOTHING_KNOWN = "{}".getBytes(StandardCharsets.UTF_8);

  private final OutsideReports reports;
  private final JsonPart json;
  private final Texts texts;
  private final SignedIn signedIn;

  OutsideReportController(OutsideReports reports, JsonPart json, Texts texts, SignedIn signedIn) {
    this.reports = reports;
    this.signedIn = signedIn;
    this.json = json;
    this.texts = texts;
  }

  @PostMapping(consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
  @Operation(
      summary = "Hold somebody else's curves against the record",
      description =
          "Text files: frequency and level a line, for left and right, once a seating (parts left, right); or frequency,"
              + " left and right (part both); or an average of both channels (part average). Compared by region: E_n ="
              + " (x − X)/√(U_lab² + U_out²). What is not known of the rig is assumed, and said to be.",
      requestBody =
          @io.swagger.v3.oas.annotations.parameters.RequestBody(
              content =
                  @Content(
                      mediaType = MediaType.MULTIPART_FORM_DATA_VALUE,
                      schema = @Schema(implementation = Form.class))))
  @ApiResponse(responseCode = "201", description = "Compared, kept and sealed")
  @ApiResponse(responseCode = "200", description = "With keep=false: compared only")
  ResponseEntity<OutsideViews.View> compare(
      @PathVariable String serial,
      @Parameter(description = "false: only try") @RequestParam(defaultValue = "true") boolean keep,
      HttpServletRequest http,
      Locale locale)
      throws IOException, ServletException {
    FormParts parts = FormParts.of(http, SentCurves.PARTS);
    byte[] said =
        parts.all("report").isEmpty()
            ? NOTHING_KNOWN
            : parts.one("report", "a JSON object with tuning, rig, source, as far as known");
    OutsideRequest request = json.read("report", said, OutsideRequest.class);
    SentCurves sent = SentCurves.of(parts);
    if (!keep) {
      return ResponseEntity.ok(
          OutsideViews.of(reports.tried(serial, request, sent), texts, locale));
    }
    OutsideViews.View view =
        OutsideViews.of(
            reports.kept(serial, request, sent, signedIn.person().orElse(null)), texts, locale);
    return ResponseEntity.created(URI.create(view.links().get("self"))).body(view);
  }

  @GetMapping
  @Operation(summary = "The outside reports about a unit, newest first")
  Map<String, List<OutsideViews.View>> list(@PathVariable String serial, Locale locale) {
    return Map.of(
        "items",
        reports.ofUnit(serial).stream()
            .map(report -> OutsideViews.of(report, texts, locale))
            .toList());
  }

  @GetMapping("/{id}")
  @Operation(summary = "One outside report and its answer, as it was given")
  OutsideViews.View one(@PathVariable String serial, @PathVariable UUID id, Locale locale) {
    return OutsideViews.of(reports.find(serial, id), texts, locale);
  }

  @DeleteMapping("/{id}/source")
  @ResponseStatus(HttpStatus.NO_CONTENT)
  @Operation(summary = "Forget who published it")
  void eraseSource(@PathVariable String serial, @PathVariable UUID id) {
    reports.eraseSource(serial, id);
  }

  /** For the API's description. */
  record Form(
      OutsideRequest report,
      @Schema(type = "string", format = "binary", description = "text, once a seating") byte[] left,
      @Schema(type = "string", format = "binary", description = "text, once a seating")
          byte[] right,
      @Schema(type = "string", format = "binary", description = "text: frequency, left, right")
          byte[] both,
      @Schema(type = "string", format = "binary", description = "text: average of both channels")
          byte[] average) {}
}
