package evenpair.inspections;

import evenpair.inspections.MeasuredCurves.MeasuredUnit;
import evenpair.tolerance.Uncertainty;
import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Reads what closed inspections say of their earpieces by plain JDBC. */
@Component
@Transactional(readOnly = true)
class StoredEarpieces implements PairedEarpieces {
  private static final String LEFT = "coalesce(i.left_earpiece, i.serial || '.L')";
  private static final String RIGHT = "coalesce(i.right_earpiece, i.serial || '.R')";

  private static final String FACTS =
      """
      select i.id, i.serial, i.batch, i.product, i.tuning, i.station, i.occasion, i.verdict, v.reasons, %s as left_name, %s as right_name, i.limit_set_id,
        i.started_at, v.level_uncertainty_db, v.match_uncertainty_db, v.offset_uncertainty_db, v.balance_uncertainty_db
      from inspection i join inspection_verdict v on v.inspection_id = i.id where i.state = 'CLOSED'
      """
          .formatted(LEFT, RIGHT);

  private static final String NEWEST_OF_EACH =
      "select distinct on (serial) * from (%s) f order by serial, started_at desc, id desc";

  private static final String WHEREABOUTS =
      """
      select i.id, i.serial, i.verdict, i.left_earpiece, i.right_earpiece, i.started_at from inspection i
      where i.state = 'CLOSED' and i.product = ? and i.tuning = ? and (i.left_earpiece = any(?) or i.right_earpiece = any(?))
      order by i.started_at, i.id
      """;

  private final JdbcTemplate jdbc;
  private final MeasuredCurves curves;
  private final ReasonViews views;

  StoredEarpieces(JdbcTemplate jdbc, MeasuredCurves curves, ReasonViews views) {
    this.jdbc = jdbc;
    this.curves = curves;
    this.views = views;
  }

  @Override
  public List<InspectedPair> of(Collection<UUID> inspections) {
    return read(FACTS + " and i.id = any(?)", (Object) inspections.toArray(UUID[]::new));
  }

  @Override
  public List<InspectedPair> ofBatch(String batch, String product, String tuning) {
    return read(
        NEWEST_OF_EACH.formatted(FACTS + " and i.batch = ? and i.product = ? and i.tuning = ?"),
        batch,
        product,
        tuning);
  }

  @Override
  public List<InspectedPair> ofSerials(Collection<String> serials, String product, String tuning) {
    return read(
        NEWEST_OF_EACH.formatted(
            FACTS + " and i.serial = any(?) and i.product = ? and i.tuning = ?"),
        serials.toArray(String[]::new),
        product,
        tuning);
  }

  @Override
  public Map<String, Whereabouts> lastInspected(
      String product, String tuning, Collection<String> earpieces) {
    String[] names = earpieces.toArray(String[]::new);
    Map<String, Whereabouts> last = new HashMap<>();
    jdbc.query(
        WHEREABOUTS,
        row -> {
          Whereabouts found =
              new Whereabouts(
                  row.getObject(1, UUID.class),
                  row.getString(2),
                  row.getString(3),
                  row.getString(4),
                  row.getString(5),
                  row.getObject(6, OffsetDateTime.class).toInstant());
          if (found.left() != null) {
            last.put(found.left(), found);
          }
          if (found.right() != null) {
            last.put(found.right(), found);
          }
        },
        product,
        tuning,
        names,
        names);
    last.keySet().retainAll(earpieces);
    return last;
  }

  @Override
  public Optional<String> serial(String sent) {
    return Names.accept(sent);
  }

  private List<InspectedPair> read(String sql, Object... values) {
    Locale locale = LocaleContextHolder.getLocale();
    List<InspectedPair> facts =
        jdbc.query(
            "select * from (" + sql + ") g order by started_at, id",
            (row, number) -> facts(row, locale),
            values);
    Map<UUID, MeasuredUnit> measured =
        curves.of(facts.stream().map(InspectedPair::inspection).toList()).stream()
            .collect(Collectors.toMap(MeasuredUnit::inspection, Function.identity()));
    return facts.stream().map(fact -> with(fact, measured.get(fact.inspection()))).toList();
  }

  private InspectedPair facts(ResultSet row, Locale locale) throws SQLException {
    return new InspectedPair(
        row.getObject(1, UUID.class),
        row.getString(2),
        row.getString(3),
        row.getString(4),
        row.getString(5),
        row.getString(6),
        Occasion.valueOf(row.getString(7)).word(),
        row.getString(8),
        views.of(RecordJson.read(row.getString(9)), locale),
        row.getString(10),
        row.getString(11),
        row.getObject(12, UUID.class),
        row.getObject(13, OffsetDateTime.class).toInstant(),
        null,
        uncertainty(row));
  }

  private static InspectedPair with(InspectedPair facts, MeasuredUnit measured) {
    return new InspectedPair(
        facts.inspection(),
        facts.serial(),
        facts.batch(),
        facts.product(),
        facts.tuning(),
        facts.station(),
        facts.occasion(),
        facts.verdict(),
        facts.reasons(),
        facts.leftEarpiece(),
        facts.rightEarpiece(),
        facts.limitSetId(),
        facts.at(),
        measured == null ? null : measured.pair(),
        facts.uncertainty());
  }

  private static Optional<Uncertainty> uncertainty(ResultSet row) throws SQLException {
    float[] level = floats(row.getArray(14));
    return level == null
        ? Optional.empty()
        : Optional.of(
            new UsedUncertainty(
                    List.of(),
                    level,
                    floats(row.getArray(15)),
                    row.getDouble(16),
                    row.getDouble(17))
                .toUncertainty());
  }

  private static float[] floats(Array array) throws SQLException {
    if (array == null) {
      return null;
    }
    Float[] boxed = (Float[]) array.getArray();
    float[] values = new float[boxed.length];
    for (int i = 0; i < boxed.length; i++) {
      values[i] = boxed[i];
    }
    return values;
  }
}
