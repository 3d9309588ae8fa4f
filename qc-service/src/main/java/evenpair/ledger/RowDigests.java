package evenpair.ledger;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Digests of whole rows: SHA-256 over the rows' JSON as PostgreSQL writes it ({@code to_json},
 * nulls left out, so that a column added later changes nothing), one row a line, lines sorted by
 * their bytes. Floating-point columns are written in the shortest form that reads back to the same
 * bits; instants in UTC.
 */
@Component
class RowDigests {
  private final JdbcClient jdbc;

  RowDigests(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  /** How many rows there are, and their digest in hex. */
  record Digest(int count, String sha256) {}

  /**
   * To be called in a transaction, with everything written that is to be seen.
   *
   * @return one digest a set, in the order given
   */
  List<Digest> of(List<Evidence.Rows> sets) {
    if (sets.isEmpty()) {
      return List.of();
    }
    // for this transaction only; instants are written as JSON in the session's zone
    jdbc.sql("select set_config('TimeZone', 'UTC', true)").query(String.class).single();
    String union = sets.stream().map(RowDigests::select).collect(Collectors.joining(" union all "));
    JdbcClient.StatementSpec statement = jdbc.sql(union + " order by place");
    List<Object> values = new ArrayList<>();
    for (int place = 0; place < sets.size(); place++) {
      values.add(place);
      values.add(sets.get(place).value());
    }
    return statement
        .params(values)
        .query((row, index) -> new Digest(row.getInt("rows"), row.getString("sha256")))
        .list();
  }

  /** Names are checked by {@link Evidence.Rows}; the value is a parameter. */
  private static String select(Evidence.Rows set) {
    return """
    select ?::int as place, count(*)::int as rows,
      encode(sha256(convert_to(coalesce(string_agg(line, E'\\n' order by line collate "C"), ''), 'UTF8')), 'hex') as sha256
    from (select json_strip_nulls(to_json(t))::text as line from %s t where t.%s = ?) lines
    """
        .formatted(set.table(), set.column());
  }

  /**
   * @return what an entry says of its evidence
   */
  List<Map<String, Object>> described(List<Evidence.Rows> sets) {
    List<Digest> digests = of(sets);
    List<Map<String, Object>> described = new ArrayList<>();
    for (int i = 0; i < sets.size(); i++) {
      Evidence.Rows set = sets.get(i);
      Map<String, Object> one = new LinkedHashMap<>();
      one.put("table", set.table());
      one.put("column", set.column());
      one.put("value", set.value().toString());
      one.put("rows", digests.get(i).count());
      one.put("sha256", digests.get(i).sha256());
      described.add(one);
    }
    return described;
  }
}
