package evenpair.batches;

import evenpair.inspections.Inspections;
import evenpair.inspections.Inspections.BatchSummary;
import evenpair.web.Refusal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.springframework.stereotype.Component;

/** Finds the one product and tuning that the asked batches have in common. */
@Component
class TrialSelection {
  private final Inspections inspections;

  TrialSelection(Inspections inspections) {
    this.inspections = inspections;
  }

  record Part(String product, String tuning) {
    Map<String, Object> asQuery() {
      Map<String, Object> query = new LinkedHashMap<>();
      query.put("product", product);
      query.put("tuning", tuning);
      return query;
    }
  }

  /**
   * @throws Refusal 404 for an unknown batch, 422 with {@code choices} where not exactly one
   *     product and tuning answers
   */
  Part of(Set<String> batches, String product, String tuning) {
    List<BatchSummary> known = inspections.batches();
    for (String batch : batches) {
      if (known.stream().noneMatch(summary -> summary.batch().equals(batch))) {
        throw new Refusal(
            404, "unknown-batch", "No unit of a batch \"" + batch + "\" has been judged.");
      }
    }
    List<Part> parts =
        known.stream()
            .filter(summary -> batches.contains(summary.batch()))
            .flatMap(summary -> summary.tunings().stream().map(t -> new Part(summary.product(), t)))
            .distinct()
            .toList();
    List<Part> meant =
        parts.stream()
            .filter(part -> product == null || Objects.equals(product, part.product()))
            .filter(part -> tuning == null || Objects.equals(tuning, part.tuning()))
            .toList();
    if (meant.size() != 1) {
      throw new Refusal(
              422,
              meant.isEmpty() ? "no-such-part" : "mixed-batch",
              "A trial needs one product in one tuning. Choose one with product and tuning.")
          .with("choices", (meant.isEmpty() ? parts : meant).stream().map(Part::asQuery).toList());
    }
    return meant.get(0);
  }
}
