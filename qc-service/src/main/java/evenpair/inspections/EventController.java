package evenpair.inspections;

import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.ExampleObject;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;

/** Live events for screens. */
@RestController
@AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
@Tag(name = "Events")
class EventController {
  private final LiveEvents live;

  EventController(LiveEvents live) {
    this.live = live;
  }

  @GetMapping(path = "/api/events", produces = MediaType.TEXT_EVENT_STREAM_VALUE)
  @Operation(
      summary = "Server-sent events",
      description =
          "Events 'attempt' and 'inspection-closed' as they are recorded, 'station' when a bench has told what it holds, and a comment"
              + " every 15 s; of every service process on the database. Nothing is repeated: a screen that was away reads the"
              + " lists again.")
  @ApiResponse(
      responseCode = "200",
      content =
          @Content(
              mediaType = MediaType.TEXT_EVENT_STREAM_VALUE,
              examples =
                  @ExampleObject(
                      value =
                          """
                          event:inspection-closed
                          data:{"id":"019ab8c6-2f10-7d3e-9b1c-5a4d7c1e0f22","serial":"SG2-004217","station":"bench-1","batch":"SW-2647","product":"sedge-2","tuning":"plain","state":"closed","verdict":"PASS","lastAttempt":"PASS"}
                          """)))
  ResponseEntity<SseEmitter> events() {
    return ResponseEntity.ok()
        .header("Cache-Control", "no-store")
        .header("X-Accel-Buffering", "no")
        .body(live.listen());
  }
}
