package evenpair.inspections;

import evenpair.web.Paging;
import evenpair.web.Refusal;
import jakarta.persistence.criteria.CriteriaBuilder;
import jakarta.persistence.criteria.Predicate;
import jakarta.persistence.criteria.Root;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.springframework.data.domain.Sort;
import org.springframework.data.jpa.domain.Specification;

/**
 * Which inspections a list shows; null means any.
 *
 * @param verdict PASS or FAIL
 * @param newestFirst the order, by time of first arrival
 */
record InspectionFilter(
    String station,
    String batch,
    String serial,
    String product,
    String tuning,
    Outcome verdict,
    boolean newestFirst) {

  static InspectionFilter of(
      String station,
      String batch,
      String serial,
      String product,
      String tuning,
      String verdict,
      String order) {
    if (verdict != null && !verdict.equals("PASS") && !verdict.equals("FAIL")) {
      throw invalid("verdict", verdict, List.of("PASS", "FAIL"));
    }
    if (!order.equals("newest") && !order.equals("oldest")) {
      throw invalid("order", order, List.of("newest", "oldest"));
    }
    String inNfc = serial == null ? null : Names.accept(serial).orElse(serial);
    Outcome wanted = verdict == null ? null : Outcome.valueOf(verdict);
    return new InspectionFilter(
        station, batch, inNfc, product, tuning, wanted, order.equals("newest"));
  }

  private static Refusal invalid(String name, String value, List<String> choices) {
    return new Refusal(
            400,
            "invalid-parameter",
            "The parameter '"
                + name
                + "' is '"
                + value
                + "'; known: "
                + String.join(", ", choices)
                + ".")
        .with("field", name)
        .with("choices", choices);
  }

  Sort sort() {
    return Sort.by(newestFirst ? Sort.Direction.DESC : Sort.Direction.ASC, "id");
  }

  Specification<InspectionRow> behind(Paging paging) {
    UUID after = paging.after() == null ? null : cursor(paging.after());
    return (row, query, criteria) -> {
      List<Predicate> all = new ArrayList<>(equalTo(row, criteria));
      if (after != null) {
        all.add(
            newestFirst
                ? criteria.lessThan(row.get("id"), after)
                : criteria.greaterThan(row.get("id"), after));
      }
      return criteria.and(all.toArray(Predicate[]::new));
    };
  }

  private List<Predicate> equalTo(Root<InspectionRow> row, CriteriaBuilder criteria) {
    List<Predicate> all = new ArrayList<>();
    add(all, row, criteria, "station", station);
    add(all, row, criteria, "batch", batch);
    add(all, row, criteria, "serial", serial);
    add(all, row, criteria, "product", product);
    add(all, row, criteria, "tuning", tuning);
    add(all, row, criteria, "verdict", verdict);
    return all;
  }

  private static void add(
      List<Predicate> all,
      Root<InspectionRow> row,
      CriteriaBuilder criteria,
      String field,
      Object value) {
    if (value != null) {
      all.add(criteria.equal(row.get(field), value));
    }
  }

  private static UUID cursor(String after) {
    try {
      return UUID.fromString(after);
    } catch (IllegalArgumentException e) {
      throw new Refusal(
              400, "invalid-parameter", "The parameter 'after' is not a place in this list.")
          .with("field", "after")
          .with("expected", "the value from a 'next' link");
    }
  }
}
