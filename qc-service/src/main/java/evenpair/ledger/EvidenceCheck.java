package evenpair.ledger;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.JsonNode;

/**
 * Rows and files behind the entries of one walk: reads them again, and counts what the entries
 * cover of each table, so that a row that no entry speaks of is noticed too.
 */
final class EvidenceCheck {
  private final JdbcClient jdbc;
  private final RowDigests digests;
  private final SealedFiles store;
  private final Map<String, Long> covered = new HashMap<>();
  private final Set<String> filesSeen = new HashSet<>();
  private long rows;
  private long withoutEvidence;

  EvidenceCheck(JdbcClient jdbc, RowDigests digests, SealedFiles store) {
    this.jdbc = jdbc;
    this.digests = digests;
    this.store = store;
  }

  long rows() {
    return rows;
  }

  int files() {
    return filesSeen.size();
  }

  /** Entries of a time when rows and files were not sealed with them. */
  long withoutEvidence() {
    return withoutEvidence;
  }

  /**
   * @param entry the entry's content, whose leaf holds
   * @return what is wrong with its evidence, as the rest of a sentence that begins with the entry
   */
  Optional<String> problem(JsonNode entry) {
    if (!entry.has("rows") && !entry.has("files")) {
      withoutEvidence++;
      return Optional.empty();
    }
    return rowProblem(entry.path("rows")).or(() -> fileProblem(entry.path("files")));
  }

  private Optional<String> rowProblem(JsonNode described) {
    List<Evidence.Rows> sets =
        described
            .valueStream()
            .map(
                set ->
                    new Evidence.Rows(
                        set.path("table").asString(),
                        set.path("column").asString(),
                        UUID.fromString(set.path("value").asString())))
            .toList();
    List<RowDigests.Digest> found = digests.of(sets);
    for (int i = 0; i < sets.size(); i++) {
      Optional<String> problem = problem(sets.get(i), described.get(i), found.get(i));
      if (problem.isPresent()) {
        return problem;
      }
    }
    return Optional.empty();
  }

  private Optional<String> problem(Evidence.Rows set, JsonNode sealed, RowDigests.Digest found) {
    covered.merge(set.table(), (long) found.count(), Long::sum);
    rows += found.count();
    int expected = sealed.path("rows").asInt();
    String where = "table %s where %s = %s".formatted(set.table(), set.column(), set.value());
    if (found.count() != expected) {
      return Optional.of(
          "sealed %d rows of %s, found %d".formatted(expected, where, found.count()));
    }
    return sealed.path("sha256").asString().equals(found.sha256())
        ? Optional.empty()
        : Optional.of("does not agree with %s: what stands there was changed".formatted(where));
  }

  private Optional<String> fileProblem(JsonNode files) {
    for (JsonNode file : files) {
      String sha256 = file.asString();
      if (filesSeen.add(sha256)) {
        Optional<String> problem = store.problem(sha256);
        if (problem.isPresent()) {
          return problem.map(text -> "names capture file " + sha256 + ", which " + text);
        }
      }
    }
    return Optional.empty();
  }

  /**
   * To be asked when every sealed entry was walked.
   *
   * @param waiting entries that no block holds yet; their rows count as covered
   * @return a table that holds other rows than the entries speak of
   */
  Optional<String> strayRows(List<JsonNode> waiting) {
    if (withoutEvidence > 0) {
      return Optional.empty(); // those entries may speak of any rows
    }
    waiting.forEach(
        entry ->
            entry
                .path("rows")
                .forEach(
                    set ->
                        covered.merge(
                            set.path("table").asString(), set.path("rows").asLong(), Long::sum)));
    for (String table : SealedTables.WHOLLY) {
      long stored = jdbc.sql("select count(*) from " + table).query(Long.class).single();
      long sealed = covered.getOrDefault(table, 0L);
      if (stored != sealed) {
        return Optional.of(
            "table %s holds %d rows, the ledger's entries cover %d"
                .formatted(table, stored, sealed));
      }
    }
    return Optional.empty();
  }
}
