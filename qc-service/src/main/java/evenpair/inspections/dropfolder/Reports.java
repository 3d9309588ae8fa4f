package evenpair.inspections.dropfolder;

import evenpair.web.Refusal;
import evenpair.web.Texts;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Writes what lies beside a set: what it came to, or why it was refused and how to mend it. */
final class Reports {
  private final Texts texts;
  private final Function<Refusal, ?> problems;
  private final JsonMapper json;
  private final Locale locale;

  /**
   * @param problems makes the problem document of a refusal
   */
  Reports(Texts texts, Function<Refusal, ?> problems, JsonMapper json, Locale locale) {
    this.texts = texts;
    this.problems = problems;
    this.json = json;
    this.locale = locale;
  }

  Outcome done(DropSet set, Ingest.Taken taken, Instant at) {
    JsonNode record = json.readTree(taken.json());
    ObjectNode report = json.createObjectNode();
    report.put("inspection", taken.inspection().toString());
    for (String field : new String[] {"serial", "batch", "product", "tuning", "station"}) {
      report.set(field, record.path(field));
    }
    for (String field : new String[] {"state", "verdict", "lastAttempt", "next"}) {
      report.set(field, record.path(field));
    }
    report.set("reasons", reasons(record));
    report.put("takenBefore", taken.replay());
    report.put("takenAt", second(at).toString());
    report.set("files", json.valueToTree(set.files()));
    return new Outcome(Outcome.DONE, Map.of("result.json", pretty(report)));
  }

  /** Of the verdict; while there is none, of the last try. */
  private ArrayNode reasons(JsonNode record) {
    JsonNode reasons = record.path("reasons");
    JsonNode attempts = record.path("attempts");
    if (reasons.isEmpty() && !attempts.isEmpty()) {
      reasons = attempts.get(attempts.size() - 1).path("reasons");
    }
    ArrayNode all = json.createArrayNode();
    for (JsonNode reason : reasons) {
      ObjectNode one = all.addObject();
      for (String field : new String[] {"kind", "channel", "region", "text"}) {
        one.set(field, reason.path(field));
      }
    }
    return all;
  }

  Outcome refused(DropSet set, Refusal refusal, String station, Instant at) {
    Map<String, String> reports = new LinkedHashMap<>();
    reports.put("reason.txt", reason(set, refusal, station, at));
    reports.put("problem.json", pretty(json.valueToTree(problems.apply(refusal))));
    return new Outcome(Outcome.REFUSED, reports);
  }

  private String reason(DropSet set, Refusal refusal, String station, Instant at) {
    StringBuilder text = new StringBuilder();
    line(text, "drop.refused.title", Map.of("set", set.name()));
    text.append('\n');
    line(text, "drop.refused.what", Map.of("detail", refusal.getMessage()));
    Object part = refusal.members().get("part");
    set.fileOf(part).ifPresent(file -> line(text, "drop.refused.file", Map.of("file", file)));
    member(refusal, "field")
        .ifPresent(field -> line(text, "drop.refused.field", Map.of("field", field)));
    member(refusal, "place")
        .ifPresent(place -> line(text, "drop.refused.place", Map.of("place", place)));
    member(refusal, "expected")
        .ifPresent(right -> line(text, "drop.refused.expected", Map.of("expected", right)));
    text.append('\n');
    line(text, "drop.refused.mend", Map.of());
    line(text, "drop.refused.when", Map.of("at", second(at), "station", station));
    return text.toString();
  }

  private static Optional<Object> member(Refusal refusal, String name) {
    return Optional.ofNullable(refusal.members().get(name));
  }

  private void line(StringBuilder text, String key, Map<String, ?> values) {
    text.append(texts.render(locale, key, values)).append('\n');
  }

  private static Instant second(Instant at) {
    return at.truncatedTo(ChronoUnit.SECONDS);
  }

  private String pretty(JsonNode node) {
    return json.writerWithDefaultPrettyPrinter().writeValueAsString(node) + "\n";
  }
}
