package evenpair.inspections.plant;

import evenpair.stations.Stations;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Refusal;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.time.Instant;
import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/** Takes what a bench says of the captures that it holds. */
@RestController
@Tag(name = "Health")
class HeldController {
  private static final int MOST = 1_000_000;

  private final HeldReports reports;
  private final Stations stations;
  private final Clock clock;

  HeldController(HeldReports reports, Stations stations, Clock clock) {
    this.reports = reports;
    this.stations = stations;
    this.clock = clock;
  }

  @Schema(name = "HeldCaptures")
  record Held(
      @Schema(description = "seatings whose captures the bench holds, 0 upwards", example = "3")
          Integer count,
      @Schema(
              description =
                  "when the oldest of them was measured; left out or null with a count of 0",
              example = "2026-11-25T07:00:00Z",
              nullable = true)
          Instant oldestAt) {}

  @PutMapping("/api/stations/{station}/held")
  @ResponseStatus(HttpStatus.NO_CONTENT)
  @AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER})
  @Operation(
      summary = "Say how many captures a bench holds",
      description =
          "A bench tells this when the number changes, and every minute or so while it is on: that also says that it is heard of."
              + " Only the newest report is kept.")
  @ApiResponse(responseCode = "204", description = "Kept")
  void put(@PathVariable String station, @RequestBody Held held) {
    if (held.count() == null || held.count() < 0 || held.count() > MOST) {
      throw invalid("count", "a whole number from 0 to " + MOST);
    }
    if (held.count() == 0 && held.oldestAt() != null) {
      throw invalid("oldestAt", "nothing, as no capture is held");
    }
    if (!stations.names().contains(station)) {
      throw new Refusal(
              404,
              "unknown-station",
              "There is no station of that name; PUT /api/stations/{station} makes one.")
          .with("field", "station")
          .with("choices", stations.names());
    }
    reports.put(new HeldReports.Report(station, held.count(), held.oldestAt(), clock.instant()));
  }

  private static Refusal invalid(String field, String expected) {
    return new Refusal(
            400,
            "invalid-field",
            "The field '" + field + "' is not right; expected: " + expected + ".")
        .with("field", field)
        .with("expected", expected);
  }
}
