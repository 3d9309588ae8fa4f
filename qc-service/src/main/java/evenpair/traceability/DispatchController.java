package evenpair.traceability;

import evenpair.traceability.DispatchDesk.Taken;
import evenpair.traceability.DispatchJson.Dispatch;
import evenpair.traceability.DispatchJson.Request;
import evenpair.traceability.DispatchJson.Unit;
import evenpair.traceability.DispatchStore.Head;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Page;
import evenpair.web.Paging;
import evenpair.web.Refusal;
import evenpair.web.Texts;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.ExampleObject;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.net.URI;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
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
@RequestMapping("/api/dispatches")
@Tag(name = "Dispatches", description = "Which units left the house, when, under which delivery")
@AllowedFor({Caller.ENGINEER, Caller.ADMINISTRATOR})
class DispatchController {
  private static final String EXAMPLE =
      """
      {"reference": "DN-2026-0117", "shippedAt": "2026-11-26T15:00:00Z", "serials": ["SG2-004217", "SG2-004231"]}\
      """;
  private static final String UNKNOWN =
      """
      {"type": "/problems/unknown-serials", "title": "Unknown serials", "status": 422,
       "detail": "Of these units there is no inspection: SG2-999998, SG2-999999. Nothing was recorded.", "field": "serials",
       "unknown": ["SG2-999998", "SG2-999999"]}\
      """;

  private final DispatchDesk desk;
  private final DispatchStore store;
  private final Texts texts;

  DispatchController(DispatchDesk desk, DispatchStore store, Texts texts) {
    this.desk = desk;
    this.store = store;
    this.texts = texts;
  }

  @PostMapping(consumes = MediaType.APPLICATION_JSON_VALUE)
  @Operation(
      summary = "Record what was shipped",
      description =
          "Insert only and sealed. The reference is taken once: the same list again is answered like"
              + " the first time (200, Idempotent-Replay: true), another list is 409. One unknown"
              + " serial refuses the whole list, and all of them are named.",
      requestBody =
          @io.swagger.v3.oas.annotations.parameters.RequestBody(
              required = true,
              content =
                  @Content(
                      mediaType = MediaType.APPLICATION_JSON_VALUE,
                      examples = @ExampleObject(EXAMPLE))))
  @ApiResponse(responseCode = "201", description = "Recorded")
  @ApiResponse(
      responseCode = "422",
      description = "Unknown serials, every one of them named",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE,
              examples = @ExampleObject(UNKNOWN)))
  ResponseEntity<Dispatch> record(
      @RequestBody Request request, @Parameter(hidden = true) Locale locale) {
    Taken taken = desk.take(request);
    Dispatch body = whole(taken.head(), locale);
    return taken.replayed()
        ? ResponseEntity.ok().header("Idempotent-Replay", "true").body(body)
        : ResponseEntity.created(URI.create("/api/dispatches/" + body.id())).body(body);
  }

  @PostMapping(consumes = "text/csv")
  @Operation(
      summary = "The same from a CSV list",
      description = "One serial a line: the column 'serial', or the first one without a title.")
  @ApiResponse(responseCode = "201", description = "Recorded")
  ResponseEntity<Dispatch> record(
      @RequestBody byte[] csv,
      @Parameter(example = "DN-2026-0117") @RequestParam String reference,
      @RequestParam(required = false) Instant shippedAt,
      @Parameter(hidden = true) Locale locale) {
    return record(new Request(reference, shippedAt, SerialList.read(csv)), locale);
  }

  @GetMapping
  @Operation(summary = "Dispatches, newest first")
  Page<Dispatch> list(
      @Parameter(example = "SG2-004217") @RequestParam(required = false) String serial,
      @Parameter(description = "from a 'next' link") @RequestParam(required = false) String after,
      @Parameter(description = "1 to 500") @RequestParam(required = false) Integer limit) {
    Paging paging = Paging.of(after, limit);
    return Page.of(
        store.newest(serial, cursor(paging), paging.rowsToRead()).stream()
            .map(DispatchController::summary)
            .toList(),
        paging,
        item -> item.id().toString());
  }

  @GetMapping("/{id}")
  @Operation(summary = "One dispatch with its units")
  Dispatch one(@PathVariable("id") UUID id, @Parameter(hidden = true) Locale locale) {
    return whole(
        store
            .find(id)
            .orElseThrow(
                () -> new Refusal(404, "unknown-dispatch", "There is no dispatch " + id + ".")),
        locale);
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

  private static Dispatch summary(Head head) {
    return new Dispatch(
        head.id(),
        head.reference(),
        head.shippedAt(),
        head.recordedAt(),
        head.units(),
        null,
        null,
        null,
        null);
  }

  private Dispatch whole(Head head, Locale locale) {
    List<Unit> units = store.units(head.id());
    List<String> notPassed =
        units.stream().filter(u -> !"PASS".equals(u.verdict())).map(Unit::serial).toList();
    List<String> also =
        store.of(units.stream().map(Unit::serial).toList()).entrySet().stream()
            .filter(e -> e.getValue().stream().anyMatch(s -> !s.dispatch().equals(head.id())))
            .map(Map.Entry::getKey)
            .sorted()
            .toList();
    List<String> notes = new ArrayList<>();
    if (!notPassed.isEmpty()) {
      notes.add(note(locale, "not-passed", notPassed));
    }
    if (!also.isEmpty()) {
      notes.add(note(locale, "also-in", also));
    }
    return new Dispatch(
        head.id(),
        head.reference(),
        head.shippedAt(),
        head.recordedAt(),
        head.units(),
        units,
        notPassed,
        also,
        notes);
  }

  private String note(Locale locale, String word, List<String> serials) {
    return texts.render(
        locale, "dispatch.note." + word, Map.of("units", String.join(", ", serials)));
  }
}
