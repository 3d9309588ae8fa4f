package evenpair.products;

import evenpair.access.SignedIn;
import evenpair.products.GoldenViews.ExpectedView;
import evenpair.products.GoldenViews.GoldenView;
import evenpair.products.VersionRows.Golden;
import evenpair.products.VersionViews.ActivationTime;
import evenpair.products.VersionViews.Approval;
import evenpair.tolerance.GoldenResponse;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Page;
import evenpair.web.Paging;
import evenpair.web.Refusal;
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
import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
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
@RequestMapping("/api/products/{product}/tunings/{tuning}/golden-responses")
@Tag(name = "products")
class GoldenResponseController {
  private static final String EXAMPLE =
      "frequency_hz,level_db,phase_deg\n19.95,101.748,3.74\n20.54,101.757,3.21\n";

  private final StoredProducts products;
  private final GoldenDesk desk;
  private final GoldenViews views;
  private final SignedIn signedIn;
  private final Clock clock;

  GoldenResponseController(
      StoredProducts products, GoldenDesk desk, GoldenViews views, SignedIn signedIn, Clock clock) {
    this.products = products;
    this.desk = desk;
    this.views = views;
    this.signedIn = signedIn;
    this.clock = clock;
  }

  @GetMapping
  @Operation(
      summary = "Versions of the tuning's golden response, the newest first, drafts included")
  Page<GoldenView> list(
      @Parameter(example = "sedge-2") @PathVariable("product") String product,
      @Parameter(example = "plain") @PathVariable("tuning") String tuning,
      @Parameter(description = "go on behind this version")
          @RequestParam(name = "after", required = false)
          Integer after,
      @RequestParam(name = "limit", required = false) Integer limit,
      @Parameter(hidden = true) Locale locale) {
    Paging paging = Paging.of(after == null ? null : after.toString(), limit);
    Snapshot known = products.snapshot();
    Versions.known(known, product, tuning);
    Stream<Golden> rows =
        known.goldens(product, tuning).stream()
            .filter(row -> after == null || row.version() < after)
            .sorted(Comparator.comparing(Golden::version).reversed())
            .limit(paging.rowsToRead());
    List<GoldenView> items = views.list(known, product, tuning, rows, locale);
    return Page.of(items, paging, view -> String.valueOf(view.version()));
  }

  @GetMapping(
      path = "/{version}",
      produces = {MediaType.APPLICATION_JSON_VALUE, Bodies.CSV})
  @Operation(
      summary =
          "One version: JSON with the curve, or with Accept: text/csv the text that belongs into"
              + " limits/",
      responses =
          @ApiResponse(
              responseCode = "200",
              content = {
                @Content(
                    mediaType = MediaType.APPLICATION_JSON_VALUE,
                    schema = @Schema(implementation = GoldenView.class)),
                @Content(
                    mediaType = Bodies.CSV,
                    schema = @Schema(type = "string"),
                    examples = @ExampleObject(EXAMPLE))
              }))
  ResponseEntity<Object> read(
      @PathVariable("product") String product,
      @PathVariable("tuning") String tuning,
      @PathVariable("version") int version,
      @Parameter(hidden = true) @RequestHeader(name = HttpHeaders.ACCEPT, defaultValue = "*/*")
          String accept,
      @Parameter(hidden = true) Locale locale) {
    Snapshot known = products.snapshot();
    Golden row = Versions.golden(known, product, tuning, version);
    return Bodies.prefers(Bodies.CSV, accept)
        ? csv(row.response())
        : ResponseEntity.ok()
            .contentType(MediaType.APPLICATION_JSON)
            .body(views.view(known, row, locale));
  }

  @GetMapping(
      path = "/expected",
      produces = {MediaType.APPLICATION_JSON_VALUE, Bodies.CSV})
  @Operation(
      summary =
          "What a derived tuning's golden response should be: that of the tuning it is derived"
              + " from, plus its filters and gain",
      description =
          "JSON with gain, level and phase, or with Accept: text/csv the text that would belong"
              + " into limits/. 404 if the tuning is derived from no other.",
      responses =
          @ApiResponse(
              responseCode = "200",
              content = {
                @Content(
                    mediaType = MediaType.APPLICATION_JSON_VALUE,
                    schema = @Schema(implementation = ExpectedView.class)),
                @Content(
                    mediaType = Bodies.CSV,
                    schema = @Schema(type = "string"),
                    examples = @ExampleObject(EXAMPLE))
              }))
  ResponseEntity<Object> expected(
      @Parameter(example = "sedge-2") @PathVariable("product") String product,
      @Parameter(example = "warm") @PathVariable("tuning") String tuning,
      @Parameter(hidden = true) @RequestHeader(name = HttpHeaders.ACCEPT, defaultValue = "*/*")
          String accept) {
    Snapshot known = products.snapshot();
    Optional<String> from =
        Versions.listed(known, product, tuning).tuning(tuning).flatMap(t -> t.from());
    Expectation expectation =
        Expectation.of(known, product, tuning, clock.instant())
            .orElseThrow(() -> nothingExpected(tuning, from));
    return Bodies.prefers(Bodies.CSV, accept)
        ? csv(expectation.response())
        : ResponseEntity.ok()
            .contentType(MediaType.APPLICATION_JSON)
            .body(views.view(product, tuning, expectation));
  }

  private static Refusal nothingExpected(String tuning, Optional<String> from) {
    return new Refusal(
        404,
        "no-expectation",
        from.map(f -> tuning + " is derived from " + f + ", which has no golden response yet.")
            .orElse(tuning + " is derived from no other tuning, so nothing is expected of it."));
  }

  private static ResponseEntity<Object> csv(GoldenResponse response) {
    return ResponseEntity.ok()
        .contentType(MediaType.parseMediaType("text/csv;charset=UTF-8"))
        .body(GoldenCsv.write(response));
  }

  @AllowedFor(Caller.ENGINEER)
  @PostMapping(consumes = Bodies.CSV)
  @Operation(
      summary =
          "Drafts a golden response: frequency_hz,level_db[,phase_deg] at the 241 grid points",
      description =
          "Every problem is listed with line and what would be right (422, member \"problems\").",
      requestBody =
          @io.swagger.v3.oas.annotations.parameters.RequestBody(
              required = true,
              content =
                  @Content(
                      mediaType = Bodies.CSV,
                      schema = @Schema(type = "string"),
                      examples = @ExampleObject(EXAMPLE))),
      responses =
          @ApiResponse(
              responseCode = "201",
              content = @Content(schema = @Schema(implementation = GoldenView.class))))
  ResponseEntity<GoldenView> draft(
      @PathVariable("product") String product,
      @PathVariable("tuning") String tuning,
      @Parameter(example = "qe-1", description = "the signed-in engineer, or nothing")
          @RequestParam(name = "author", required = false)
          String author,
      @Parameter(example = "plain-golden.csv", description = "name by which limit sets refer to it")
          @RequestParam("name")
          String name,
      @Parameter(hidden = true) Locale locale,
      @Parameter(hidden = true) InputStream body)
      throws IOException {
    byte[] csv = Bodies.read(body);
    int version = desk.draft(product, tuning, name, csv, signedIn.signer("author", author));
    URI place =
        URI.create(
            "/api/products/" + product + "/tunings/" + tuning + "/golden-responses/" + version);
    return ResponseEntity.created(place).body(view(product, tuning, version, locale));
  }

  @AllowedFor(Caller.ENGINEER)
  @PostMapping("/{version}/approval")
  @Operation(
      summary = "Signs a draft off; new limit sets mean it by its name from now on",
      description = "409 if the approver is the author, or if it was signed before.")
  GoldenView approve(
      @PathVariable("product") String product,
      @PathVariable("tuning") String tuning,
      @PathVariable("version") int version,
      @Valid @RequestBody Approval approval,
      @Parameter(hidden = true) Locale locale) {
    desk.approve(
        product,
        tuning,
        version,
        signedIn.signer("approver", approval.approver()),
        approval.reason());
    return view(product, tuning, version, locale);
  }

  @AllowedFor(Caller.ENGINEER)
  @PostMapping("/{version}/activation")
  @Operation(
      summary =
          "Says from when new limit sets mean an approved version by its name; sets that exist keep"
              + " theirs")
  GoldenView activate(
      @PathVariable("product") String product,
      @PathVariable("tuning") String tuning,
      @PathVariable("version") int version,
      @Valid @RequestBody ActivationTime time,
      @Parameter(hidden = true) Locale locale) {
    desk.activate(product, tuning, version, time.from());
    return view(product, tuning, version, locale);
  }

  private GoldenView view(String product, String tuning, int version, Locale locale) {
    Snapshot known = products.snapshot();
    return views.view(known, Versions.golden(known, product, tuning, version), locale);
  }
}
