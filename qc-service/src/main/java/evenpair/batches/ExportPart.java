package evenpair.batches;

import evenpair.inspections.InspectionStream;
import evenpair.inspections.Inspections;
import evenpair.inspections.Inspections.BatchSummary;
import evenpair.web.Refusal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * What one file holds: one product in one tuning under one limit set, so that all its rows can be
 * compared. Found without reading a curve.
 */
record ExportPart(String batch, String product, String tuning, int limitSet) {

  /**
   * @param product null: the batch's only one; tuning and limit set likewise
   * @throws Refusal 404 for an unknown batch, 422 with {@code choices} where more than one or none
   *     answers to what was asked
   */
  static ExportPart of(
      Inspections inspections,
      InspectionStream stream,
      String batch,
      String product,
      String tuning,
      Integer limitSet) {
    List<ExportPart> all = all(inspections, stream, batch);
    if (all.isEmpty()) {
      throw new Refusal(
          404, "unknown-batch", "No unit of a batch \"" + batch + "\" has been judged.");
    }
    List<ExportPart> meant =
        all.stream()
            .filter(part -> product == null || product.equals(part.product()))
            .filter(part -> tuning == null || tuning.equals(part.tuning()))
            .filter(part -> limitSet == null || Objects.equals(limitSet, part.limitSet()))
            .toList();
    if (meant.size() != 1) {
      throw refusal(batch, meant.isEmpty() ? all : meant, meant.isEmpty());
    }
    return meant.get(0);
  }

  private static List<ExportPart> all(
      Inspections inspections, InspectionStream stream, String batch) {
    List<ExportPart> parts = new ArrayList<>();
    for (BatchSummary summary : inspections.batches()) {
      if (summary.batch().equals(batch)) {
        for (String tuning : summary.tunings()) {
          stream
              .versions(batch, summary.product(), tuning)
              .forEach(v -> parts.add(new ExportPart(batch, summary.product(), tuning, v)));
        }
      }
    }
    return parts;
  }

  private static Refusal refusal(String batch, List<ExportPart> choices, boolean nothing) {
    return new Refusal(
            422,
            nothing ? "no-such-part" : "mixed-batch",
            (nothing
                    ? "Batch " + batch + " has no such part."
                    : "Batch "
                        + batch
                        + " holds "
                        + choices.size()
                        + " parts, and a file holds one.")
                + " Choose one with product, tuning and limitSet.")
        .with("choices", choices.stream().map(ExportPart::asQuery).toList());
  }

  private Map<String, Object> asQuery() {
    Map<String, Object> query = new LinkedHashMap<>();
    query.put("product", product);
    query.put("tuning", tuning);
    query.put("limitSet", limitSet);
    return query;
  }

  /**
   * @param ending such as {@code csv}
   * @return such as {@code SW-2647-sedge-2-plain-v3.csv}
   */
  String fileName(String ending) {
    return batch + '-' + product + '-' + tuning + "-v" + limitSet + '.' + ending;
  }
}
