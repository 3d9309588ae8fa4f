package evenpair.inspections;

import evenpair.acoustics.Smoothing;
import evenpair.captures.CaptureStore;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Page;
import evenpair.web.Paging;
import evenpair.web.Refusal;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.springframework.core.io.InputStreamResource;
import org.springframework.http.CacheControl;
import org.springframework.http.ContentDisposition;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Shows what has been inspected. */
@RestController
@AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
@Tag(name = "Inspections")
@Transactional(readOnly = true)
class RecordController {
  private final InspectionRows inspections;
  private final AttemptRows attempts;
  private final InspectionFiles files;
  private final InspectionJsons jsons;
  private final CurveDesk curves;
  private final CaptureStore captures;

  RecordController(
      InspectionRows inspections,
      AttemptRows attempts,
      InspectionFiles files,
      InspectionJsons jsons,
      CurveDesk curves,
      CaptureStore captures) {
    this.inspections = inspections;
    this.attempts = attempts;
    this.files = files;
    this.jsons = jsons;
    this.curves = curves;
    this.captures = captures;
  }

  @GetMapping("/api/inspections")
  @Operation(
      summary = "List inspections",
      description =
          "Summaries: the same JSON as one inspection without regions and attempts. 'next' leads to the following part.")
  public Page<InspectionJson> list(
      @Parameter(example = "bench-1") @RequestParam(required = false) String station,
      @Parameter(example = "SW-2647") @RequestParam(required = false) String batch,
      @Parameter(example = "SG2-004217") @RequestParam(required = false) String serial,
      @Parameter(example = "sedge-2") @RequestParam(required = false) String product,
      @Parameter(example = "plain") @RequestParam(required = false) String tuning,
      @Parameter(description = "PASS or FAIL") @RequestParam(required = false) String verdict,
      @Parameter(description = "newest or oldest first") @RequestParam(defaultValue = "newest")
          String order,
      @Parameter(description = "from a 'next' link") @RequestParam(required = false) String after,
      @Parameter(description = "1 to 500") @RequestParam(required = false) Integer limit,
      @Parameter(hidden = true) Locale locale) {
    InspectionFilter filter =
        InspectionFilter.of(station, batch, serial, product, tuning, verdict, order);
    Paging paging = Paging.of(after, limit);
    List<InspectionRow> rows =
        inspections.findBy(
            filter.behind(paging),
            query -> query.sortBy(filter.sort()).limit(paging.rowsToRead()).all());
    List<InspectionJson> items =
        files.of(rows).stream().map(file -> jsons.summary(file, locale)).toList();
    return Page.of(items, paging, item -> item.id().toString());
  }

  @GetMapping("/api/inspections/{id}")
  @Operation(summary = "One inspection with its attempts, reasons and regions")
  public InspectionJson one(@PathVariable UUID id, @Parameter(hidden = true) Locale locale) {
    return jsons.whole(files.find(id).orElseThrow(() -> unknown(id)), locale);
  }

  @GetMapping("/api/inspections/{id}/curves")
  @Operation(
      summary = "Its curves at the 241 grid points",
      description =
          "The mean of its valid attempts as judged, or as stored with smoothing=none. Absent points are null; windows are golden"
              + " plus limits, null outside regions. 409 if no attempt was valid.")
  public CurvesJson curves(
      @PathVariable UUID id,
      @Parameter(description = "'none' for the stored curves; left out: as judged")
          @RequestParam(required = false)
          String smoothing) {
    if (smoothing != null && !smoothing.equals(Smoothing.NONE.label())) {
      throw new Refusal(
              400,
              "invalid-parameter",
              "The parameter 'smoothing' can only be 'none'; leave it out for the judged curves.")
          .with("field", "smoothing")
          .with("choices", List.of(Smoothing.NONE.label()));
    }
    InspectionRow row = inspections.findById(id).orElseThrow(() -> unknown(id));
    return curves
        .of(row, smoothing == null)
        .map(found -> CurvesJson.of(found, row.earSimulator()))
        .orElseThrow(
            () ->
                new Refusal(
                    409,
                    "no-curves",
                    "No attempt of this inspection was valid, so that there is nothing to show yet."));
  }

  @GetMapping("/api/inspections/{id}/captures/{attempt}/{side}")
  @Operation(
      summary = "The original bytes of a capture",
      description = "Exactly as sent; a file with both channels is the same for both sides.")
  @ApiResponse(
      responseCode = "200",
      content = @Content(schema = @Schema(type = "string", format = "binary")))
  public ResponseEntity<InputStreamResource> capture(
      @PathVariable UUID id,
      @Parameter(description = "1 upwards") @PathVariable int attempt,
      @Parameter(description = "left, right, idle-left or idle-right") @PathVariable String side) {
    AttemptRow row =
        attempts
            .findByInspectionIdAndNumber(id, attempt)
            .orElseThrow(
                () ->
                    new Refusal(
                        404,
                        "unknown-attempt",
                        "There is no attempt " + attempt + " of inspection " + id + "."));
    return bytes(CaptureFiles.of(row, side), id + "-" + attempt + "-" + side);
  }

  private ResponseEntity<InputStreamResource> bytes(CaptureFiles.Kept file, String name) {
    try {
      ResponseEntity.BodyBuilder answer =
          ResponseEntity.ok()
              .contentType(
                  file.curve() ? MediaType.valueOf("text/csv") : MediaType.valueOf("audio/wav"))
              .eTag('"' + file.sha256() + '"')
              .cacheControl(CacheControl.noCache())
              .header(
                  "Content-Disposition",
                  ContentDisposition.attachment()
                      .filename(name + (file.curve() ? ".csv" : ".wav"))
                      .build()
                      .toString());
      if (file.bytes() != null) {
        answer.contentLength(file.bytes());
      }
      return answer.body(new InputStreamResource(captures.open(file.sha256())));
    } catch (IOException e) {
      throw new Refusal(
          410,
          "capture-gone",
          "The file "
              + file.sha256()
              + " is not in the capture store any more; restore it from a backup.");
    }
  }

  static Refusal unknown(UUID id) {
    return new Refusal(404, "unknown-inspection", "There is no inspection " + id + ".");
  }
}
