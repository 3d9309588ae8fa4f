package evenpair.inspections;

import evenpair.web.Refusal;
import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import java.time.Duration;
import java.util.function.Supplier;
import org.springframework.stereotype.Component;

/**
 * Counts what was recorded and how long that took, for the plant's monitoring. Labels name
 * stations, products, tunings and words of ours: never a serial number, never a person.
 */
@Component
class IngestMeters {
  private static final Duration[] STEPS = {
    Duration.ofMillis(10),
    Duration.ofMillis(25),
    Duration.ofMillis(50),
    Duration.ofMillis(100),
    Duration.ofMillis(250),
    Duration.ofMillis(500),
    Duration.ofSeconds(1),
    Duration.ofMillis(2500),
    Duration.ofSeconds(10)
  };

  private final MeterRegistry registry;

  IngestMeters(MeterRegistry registry) {
    this.registry = registry;
  }

  /** Times one request from its parts to its answer. */
  Answer timed(Supplier<Answer> work) {
    Timer.Sample sample = Timer.start(registry);
    String result = "failed";
    try {
      Answer answer = work.get();
      result = answer.replay() ? "replayed" : "recorded";
      return answer;
    } catch (Refusal refusal) {
      result = refusal.status() < 500 ? "refused" : "failed";
      throw refusal;
    } finally {
      sample.stop(
          Timer.builder("evenpair.ingest")
              .description("From a request's parts to its answer")
              .tag("result", result)
              .serviceLevelObjectives(STEPS)
              .register(registry));
    }
  }

  /** One attempt of an inspection, once it has been recorded. */
  void recorded(LiveEvents.Note note) {
    String outcome = note.lastAttempt() == null ? "VALID" : note.lastAttempt();
    count("evenpair.attempts", "Attempts recorded", note, "outcome", outcome);
    if (note.verdict() != null) {
      count("evenpair.inspections", "Inspections closed", note, "verdict", note.verdict());
    }
  }

  private void count(
      String name, String description, LiveEvents.Note note, String label, String word) {
    Counter.builder(name)
        .description(description)
        .tag("station", note.station())
        .tag("product", note.product())
        .tag("tuning", note.tuning())
        .tag(label, word)
        .register(registry)
        .increment();
  }
}
