package evenpair.products;

import evenpair.access.SignedIn;
import evenpair.products.VersionRows.Limits;
import evenpair.products.VersionViews.ActivationTime;
import evenpair.products.VersionViews.Approval;
import evenpair.products.VersionViews.LimitSetView;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Page;
import evenpair.web.Paging;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.ExampleObject;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.util.Comparator;
import java.util.List;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
@RequestMapping(LimitSetController.PATH)
@Tag(name = "products")
class LimitSetController {
  static final String PATH = "/api/products/{product}/tunings/{tuning}/limit-sets";

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
        - {name: bass, hz: [20, 200], window-db: [-2, 2], match-db: 1.5}
        - {name: mid, hz: [200, 6000], window-db: [-1.5, 1.5], match-db: 1}
        - {name: treble, hz: [6000, 16000], window-db: [[-3, 3], [-6, 6]], match-db: [2.5, 4]}
      polarity: same
      decision: {rule: simple}
      """;

  private final StoredProducts products;
  private final LimitSetDesk desk;
  private final VersionViews views;
  private final SignedIn signedIn;

  LimitSetController(
      StoredProducts products, LimitSetDesk desk, VersionViews views, SignedIn signedIn) {
    this.products = products;
    this.desk = desk;
    this.views = views;
    this.signedIn = signedIn;
  }

  @GetMapping
  @Operation(summary = "Versions of the tuning's limit set, the newest first, drafts included")
  Page<LimitSetView> list(
      @Parameter(example = "sedge-2") @PathVariable("product") String product,
      @Parameter(example = "plain") @PathVariable("tuning") String tuning,
      @Parameter(description = "go on behind this version")
          @RequestParam(name = "after", required = false)
          Integer after,
      @RequestParam(name = "limit", required = false) Integer limit) {
    Paging paging = Paging.of(after == null ? null : after.toString(), limit);
    Snapshot known = products.snapshot();
    Versions.known(known, product, tuning);
    List<LimitSetView> items =
        known.limitSets(product, tuning).stream()
            .filter(row -> after == null || row.version() < after)
            .sorted(Comparator.comparing(Limits::version).reversed())
            .limit(paging.rowsToRead())
            .map(row -> views.view(known, row, false))
            .toList();
    return Page.of(items, paging, view -> String.valueOf(view.version()));
  }

  @GetMapping(
      path = "/{version}",
      produces = {MediaType.APPLICATION_JSON_VALUE, Bodies.YAML})
  @Operation(
      summary =
          "One version: JSON, or with Accept: application/yaml the text that belongs into limits/",
      responses =
          @ApiResponse(
              responseCode = "200",
              content = {
                @Content(
                    mediaType = MediaType.APPLICATION_JSON_VALUE,
                    schema = @Schema(implementation = LimitSetView.class)),
                @Content(
                    mediaType = Bodies.YAML,
                    schema = @Schema(type = "string"),
                    examples = @ExampleObject(EXAMPLE))
              }))
  ResponseEntity<Object> read(
      @PathVariable("product") String product,
      @PathVariable("tuning") String tuning,
      @PathVariable("version") int version,
      @Parameter(hidden = true) @RequestHeader(name = HttpHeaders.ACCEPT, defaultValue = "*/*")
          String accept) {
    Snapshot known = products.snapshot();
    Limits row = Versions.limitSet(known, product, tuning, version);
    return Bodies.prefers(Bodies.YAML, accept)
        ? ResponseEntity.ok()
            .contentType(MediaType.parseMediaType(Bodies.YAML + ";charset=UTF-8"))
            .body(row.definition())
        : ResponseEntity.ok()
            .contentType(MediaType.APPLICATION_JSON)
            .body(views.view(known, row, true));
  }

  @AllowedFor(Caller.ENGINEER)
  @PostMapping(
      consumes = {Bodies.YAML, "application/x-yaml", "text/yaml", MediaType.APPLICATION_JSON_VALUE})
  @Operation(
      summary = "Drafts a version, in YAML or in JSON with the same keys",
      description =
          "Every problem is listed with line, column and what would be right (422, member"
              + " \"problems\").",
      requestBody =
          @io.swagger.v3.oas.annotations.parameters.RequestBody(
              required = true,
              content =
                  @Content(
                      mediaType = Bodies.YAML,
                      schema = @Schema(type = "string"),
                      examples = @ExampleObject(EXAMPLE))),
      responses =
          @ApiResponse(
              responseCode = "201",
              content = @Content(schema = @Schema(implementation = LimitSetView.class))))
  ResponseEntity<LimitSetView> draft(
      @PathVariable("product") String product,
      @PathVariable("tuning") String tuning,
      @Parameter(example = "qe-1", description = "the signed-in engineer, or nothing")
          @RequestParam(name = "author", required = false)
          String author,
      @Parameter(hidden = true) InputStream body)
      throws IOException {
    byte[] yaml = Bodies.read(body);
    int version = desk.draft(product, tuning, yaml, signedIn.signer("author", author));
    URI place =
        URI.create("/api/products/" + product + "/tunings/" + tuning + "/limit-sets/" + version);
    return ResponseEntity.created(place).body(view(product, tuning, version));
  }

  @PostMapping("/{version}/roll-back")
  @AllowedFor(Caller.ENGINEER)
  @Operation(
      summary = "Drafts an older version's limits as a new version, on the same golden response",
      responses =
          @ApiResponse(
              responseCode = "201",
              content = @Content(schema = @Schema(implementation = LimitSetView.class))))
  ResponseEntity<LimitSetView> rollBack(
      @PathVariable("product") String product,
      @PathVariable("tuning") String tuning,
      @Parameter(example = "2", description = "the version to go back to") @PathVariable("version")
          int version,
      @Parameter(example = "qe-1", description = "the signed-in engineer, or nothing")
          @RequestParam(name = "author", required = false)
          String author) {
    int drafted = desk.rollBack(product, tuning, version, signedIn.signer("author", author));
    URI place =
        URI.create("/api/products/" + product + "/tunings/" + tuning + "/limit-sets/" + drafted);
    return ResponseEntity.created(place).body(view(product, tuning, drafted));
  }

  @AllowedFor(Caller.ENGINEER)
  @PostMapping("/{version}/approval")
  @Operation(
      summary = "Signs a draft off; it judges from now on",
      description =
          "409 if the approver is the author, if the golden response is not approved, or if it was"
              + " signed before.")
  LimitSetView approve(
      @PathVariable("product") String product,
      @PathVariable("tuning") String tuning,
      @PathVariable("version") int version,
      @Valid @RequestBody Approval approval) {
    desk.approve(
        product,
        tuning,
        version,
        signedIn.signer("approver", approval.approver()),
        approval.reason());
    return view(product, tuning, version);
  }

  @AllowedFor(Caller.ENGINEER)
  @PostMapping("/{version}/activation")
  @Operation(
      summary =
          "Says from when an approved version judges; an older version may be taken back into use"
              + " so")
  LimitSetView activate(
      @PathVariable("product") String product,
      @PathVariable("tuning") String tuning,
      @PathVariable("version") int version,
      @Valid @RequestBody ActivationTime time) {
    desk.activate(product, tuning, version, time.from());
    return view(product, tuning, version);
  }

  private LimitSetView view(String product, String tuning, int version) {
    Snapshot known = products.snapshot();
    return views.view(known, Versions.limitSet(known, product, tuning, version), true);
  }
}
