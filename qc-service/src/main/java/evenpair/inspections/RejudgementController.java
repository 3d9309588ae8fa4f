package evenpair.inspections;

import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Refusal;
import evenpair.web.jobs.Jobs;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;

@RestController
@Tag(name = "Rejudgements", description = "Stored captures computed and judged again")
@AllowedFor({Caller.ENGINEER, Caller.ADMINISTRATOR})
class RejudgementController {
  private static final int SHOWN = 20;

  private final Rejudgements rejudgements;
  private final Jobs jobs;

  RejudgementController(Rejudgements rejudgements, Jobs jobs) {
    this.rejudgements = rejudgements;
    this.jobs = jobs;
  }

  @PostMapping("/api/rejudgements")
  @Operation(
      summary = "Judge stored captures again",
      description =
          "Closed inspections, narrowed by serial, batch, product, tuning or since; without a body, all. The same software"
              + " gives the same bits; a difference above 0.001 dB, another verdict, and what cannot be computed any more"
              + " are listed.")
  @ApiResponse(responseCode = "202", description = "Begun; the job says how far it is")
  ResponseEntity<Map<String, Object>> start(
      @RequestBody(required = false) Rejudgements.Which which) {
    Rejudgements.Started started =
        rejudgements.start(
            which == null ? new Rejudgements.Which(null, null, null, null, null) : which);
    ResponseEntity<Map<String, Object>> accepted = jobs.accepted(started.job());
    Map<String, Object> body = new LinkedHashMap<>(accepted.getBody());
    body.put("rejudgement", started.rejudgement());
    return ResponseEntity.accepted().headers(accepted.getHeaders()).body(body);
  }

  @GetMapping("/api/rejudgements")
  @Operation(summary = "The newest runs")
  Map<String, List<Rejudgements.Report>> newest() {
    return Map.of("items", rejudgements.newest(SHOWN));
  }

  @GetMapping("/api/rejudgements/{id}")
  @Operation(summary = "What a run has found so far, at most 500 differences")
  Rejudgements.Report one(@PathVariable UUID id) {
    return rejudgements
        .find(id)
        .orElseThrow(
            () -> new Refusal(404, "unknown-rejudgement", "There is no rejudgement " + id + "."));
  }
}
