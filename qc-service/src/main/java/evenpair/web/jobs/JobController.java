package evenpair.web.jobs;

import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Refusal;
import evenpair.web.jobs.Jobs.Job;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Instant;
import java.util.Map;
import java.util.UUID;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

@RestController
@Tag(name = "Jobs", description = "How far long work is")
class JobController {
  private final Jobs jobs;

  JobController(Jobs jobs) {
    this.jobs = jobs;
  }

  @GetMapping("/api/jobs/{id}")
  @AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
  @Operation(
      summary = "Progress of one job",
      description = "Ask every second or so. After a crash it goes on where it was.")
  @ApiResponse(responseCode = "200", description = "How far it is")
  @ApiResponse(responseCode = "404", description = "No such job", content = @Content)
  Progress progress(@PathVariable UUID id) {
    return jobs.find(id)
        .map(Progress::of)
        .orElseThrow(() -> new Refusal(404, "unknown-job", "There is no job " + id + "."));
  }

  record Progress(
      UUID id,
      @Schema(example = "batch-certificates") String kind,
      @Schema(description = "waiting, running, done or failed", example = "running") String state,
      @Schema(description = "Steps done", example = "312") int done,
      @Schema(description = "Steps in all; null until known", example = "1001") Integer total,
      @Schema(description = "Why it failed, a sentence") String problem,
      @Schema(description = "Address of what came out, once done") String result,
      Instant startedAt,
      Instant changedAt,
      Map<String, String> links) {
    static Progress of(Job job) {
      return new Progress(
          job.id(),
          job.kind(),
          job.state(),
          job.done(),
          job.total(),
          job.problem(),
          job.result(),
          job.startedAt(),
          job.changedAt(),
          Map.of("self", "/api/jobs/" + job.id()));
    }
  }
}
