package evenpair.pairing;

import evenpair.pairing.PairingJson.Curves;
import evenpair.pairing.PairingJson.Pairing;
import evenpair.pairing.PairingJson.Request;
import evenpair.pairing.PairingJson.Summary;
import evenpair.pairing.PairingStore.Head;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Page;
import evenpair.web.Paging;
import evenpair.web.Refusal;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.ExampleObject;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.UUID;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RequestMapping("/api/pairings")
@Tag(name = "Pairing", description = "Loose earpieces, or pairs that failed, into matched pairs")
class PairingController {
  private static final String OF_A_BATCH =
      """
      {"product": "sedge-2", "tuning": "plain", "batch": "SW-2647", "which": "failed-match"}\
      """;
  private static final String OF_A_LIST =
      """
      {"product": "sedge-2", "tuning": "plain", "serials": ["SG2-004217", "SG2-004231"],
       "earpieces": [{"serial": "SG2-004240", "channel": "left"}]}\
      """;
  private static final String UNKNOWN =
      """
      {"type": "/problems/unknown-earpieces", "title": "Unknown earpieces", "status": 422,
       "detail": "These units have not been judged as sedge-2 in plain: SG2-009998, SG2-009999.", "field": "serials",
       "unknown": ["SG2-009998", "SG2-009999"]}\
      """;

  private final PairingDesk desk;
  private final PairingStore store;
  private final PairingViews views;

  PairingController(PairingDesk desk, PairingStore store, PairingViews views) {
    this.desk = desk;
    this.store = store;
    this.views = views;
  }

  @PostMapping(consumes = MediaType.APPLICATION_JSON_VALUE)
  @AllowedFor(Caller.ENGINEER)
  @Operation(
      summary = "The best pairs of a pool of earpieces",
      description =
          "As many pairs as the limit set allows, and of all such choices the one whose pairs lie"
              + " farthest inside match limits and balance. Each earpiece must keep its own level"
              + " and windows. A guarded set counts less its guard bands. Nothing changes by it: a"
              + " new pair is a unit only after its own inspection (occasion rework) with both"
              + " earpieces named.",
      requestBody =
          @io.swagger.v3.oas.annotations.parameters.RequestBody(
              required = true,
              content =
                  @Content(
                      mediaType = MediaType.APPLICATION_JSON_VALUE,
                      examples = {
                        @ExampleObject(name = "batch", value = OF_A_BATCH),
                        @ExampleObject(name = "list", value = OF_A_LIST)
                      })))
  @ApiResponse(responseCode = "201", description = "The proposal, kept")
  @ApiResponse(
      responseCode = "422",
      description = "Earpieces that nothing is known of, all of them named; or too large a pool",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE,
              examples = @ExampleObject(UNKNOWN)))
  ResponseEntity<Pairing> propose(
      @RequestBody Request request, @Parameter(hidden = true) Locale locale) {
    Head head = head(desk.propose(request));
    return ResponseEntity.created(URI.create(PairingViews.self(head)))
        .body(views.whole(head, locale));
  }

  @GetMapping
  @AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
  @Operation(summary = "Proposals, newest first")
  Page<Summary> list(
      @Parameter(example = "sedge-2") @RequestParam(required = false) String product,
      @Parameter(example = "plain") @RequestParam(required = false) String tuning,
      @Parameter(description = "from a 'next' link") @RequestParam(required = false) String after,
      @Parameter(description = "1 to 500") @RequestParam(required = false) Integer limit) {
    Paging paging = Paging.of(after, limit);
    return Page.of(
        store.newest(product, tuning, cursor(paging), paging.rowsToRead()).stream()
            .map(views::summary)
            .toList(),
        paging,
        item -> item.id().toString());
  }

  private static UUID cursor(Paging paging) {
    if (paging.after() == null) {
      return null;
    }
    try {
      return UUID.fromString(paging.after());
    } catch (IllegalArgumentException e) {
      throw new Refusal(400, "invalid-parameter", "\"after\" comes from a 'next' link.")
          .with("field", "after");
    }
  }

  @GetMapping("/{id}")
  @AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
  @Operation(summary = "One proposal with its pairs, and which of them have been inspected since")
  Pairing one(@PathVariable("id") UUID id, @Parameter(hidden = true) Locale locale) {
    return views.whole(head(id), locale);
  }

  @GetMapping("/{id}/pairs.csv")
  @AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
  @Operation(summary = "Its pairs as CSV (RFC 4180)")
  ResponseEntity<byte[]> csv(@PathVariable("id") UUID id) {
    Head head = head(id);
    return ResponseEntity.ok()
        .contentType(new MediaType("text", "csv", StandardCharsets.UTF_8))
        .header(
            HttpHeaders.CONTENT_DISPOSITION,
            ContentDisposition.attachment().filename("pairing-" + id + ".csv").build().toString())
        .body(PairingCsv.of(head, views.pairs(head)).getBytes(StandardCharsets.UTF_8));
  }

  @GetMapping("/{id}/pairs/{number}/curves")
  @AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
  @Operation(
      summary = "Both earpieces' curves as they were measured, and their difference",
      description = "Smoothed as judged, 241 values each, null where absent.")
  Curves curves(@PathVariable("id") UUID id, @PathVariable("number") int number) {
    Head head = head(id);
    return store
        .pair(id, number)
        .map(pair -> PairingViews.curves(desk.draw(head, pair)))
        .orElseThrow(
            () ->
                new Refusal(404, "unknown-pair", "Pairing " + id + " has no pair " + number + "."));
  }

  private Head head(UUID id) {
    return store
        .find(id)
        .orElseThrow(() -> new Refusal(404, "unknown-pairing", "There is no pairing " + id + "."));
  }
}
