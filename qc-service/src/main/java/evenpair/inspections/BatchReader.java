package evenpair.inspections;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Smoothing;
import evenpair.inspections.Inspections.BatchCurves;
import evenpair.inspections.Inspections.BatchSummary;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.inspections.ReadBatches.Key;
import evenpair.inspections.ReadBatches.Stamp;
import evenpair.products.Products;
import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.Channel;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;

/**
 * Reads whole batches by plain JDBC into flat arrays, through the same combination and smoothing as
 * judging.
 */
@Component
class BatchReader {
  private static final int FETCH = 500;

  private static final String WHICH =
      """
      from inspection i where i.state = 'CLOSED' and i.batch = ? and i.product = ? and i.tuning = ?
      and (?::integer is null or i.limit_set_version = ?)
      """;

  private static final String UNITS =
      """
      select i.id, i.serial, i.station, i.occasion, i.verdict, i.started_at, i.limit_set_version, i.limit_set_id,
        v.left_alignment_db, v.right_alignment_db, v.reasons,
        exists (select 1 from attempt a where a.inspection_id = i.id and a.valid)
      """
          + WHICH.replace(
              "from inspection i",
              "from inspection i join inspection_verdict v on v.inspection_id = i.id")
          + "order by i.started_at, i.id";

  private static final String CURVES =
      "select i.id, c.channel, c.level_db "
          + WHICH.replace(
              "from inspection i",
              "from inspection i join attempt a on a.inspection_id = i.id join attempt_channel c on c.attempt_id = a.id")
          + "and a.valid order by i.started_at, i.id, c.channel, a.number";

  private static final String STAMP = "select count(*), max(i.closed_at) " + WHICH;

  private static final String BATCHES =
      """
      select batch, product, array_agg(distinct tuning order by tuning), array_agg(distinct limit_set_version order by limit_set_version),
        count(distinct serial), max(last_attempt_at)
      from inspection where state = 'CLOSED' group by batch, product order by 6 desc, batch, product
      """;

  private final JdbcTemplate jdbc;
  private final Products products;
  private final ReasonViews views;
  private final ReadBatches known = new ReadBatches();

  BatchReader(JdbcTemplate jdbc, Products products, ReasonViews views) {
    this.jdbc = jdbc;
    this.products = products;
    this.views = views;
  }

  List<BatchSummary> summaries() {
    return jdbc.query(
        BATCHES,
        (row, number) ->
            new BatchSummary(
                row.getString(1),
                row.getString(2),
                List.of((String[]) row.getArray(3).getArray()),
                List.of((Integer[]) row.getArray(4).getArray()),
                row.getInt(5),
                instant(row, 6)));
  }

  private record Unit(
      BatchUnit view, int version, UUID limitSet, double leftAlignment, double rightAlignment) {}

  BatchCurves read(String batch, String product, String tuning, Integer version) {
    Object[] which = {batch, product, tuning, version, version};
    Stamp stamp =
        jdbc.queryForObject(
            STAMP,
            (row, number) ->
                new Stamp(row.getLong(1), row.getLong(1) == 0 ? null : instant(row, 2)),
            which);
    Key key = new Key(batch, product, tuning, version, LocaleContextHolder.getLocale());
    return known.get(key, stamp, () -> read(product, tuning, which));
  }

  private BatchCurves read(String product, String tuning, Object... which) {
    List<Unit> units = units(which);
    int rows = (int) units.stream().filter(unit -> unit.view().row() >= 0).count();
    float[] left = new float[rows * Grid.POINTS];
    float[] right = new float[rows * Grid.POINTS];
    fill(which, units, left, right);
    return batch(product, tuning, units, left, right);
  }

  private List<Unit> units(Object... which) {
    List<Unit> units = new ArrayList<>();
    int[] row = {0};
    jdbc.query(
        UNITS,
        found -> {
          int place = found.getBoolean(12) ? row[0]++ : -1;
          units.add(unit(found, place));
        },
        which);
    return units;
  }

  private Unit unit(ResultSet row, int place) throws SQLException {
    BatchUnit view =
        new BatchUnit(
            row.getObject(1, UUID.class),
            row.getString(2),
            row.getString(3),
            Occasion.valueOf(row.getString(4)).word(),
            row.getString(5),
            instant(row, 6),
            place,
            views.of(RecordJson.read(row.getString(11)), LocaleContextHolder.getLocale()));
    return new Unit(
        view, row.getInt(7), row.getObject(8, UUID.class), number(row, 9), number(row, 10));
  }

  private void fill(Object[] which, List<Unit> units, float[] left, float[] right) {
    Map<UUID, Unit> byId = new HashMap<>();
    units.forEach(unit -> byId.put(unit.view().inspection(), unit));
    Seatings seatings =
        new Seatings(
            (inspection, channel, levels) -> {
              Unit unit = byId.get(inspection);
              if (unit != null) {
                Smoothing smoothing = products.limitSet(unit.limitSet()).set().smoothing();
                Curve judged = smoothing.apply(Combination.level(levels));
                float[] target = channel == Channel.LEFT ? left : right;
                System.arraycopy(
                    judged.toFloats(), 0, target, unit.view().row() * Grid.POINTS, Grid.POINTS);
              }
            });
    JdbcTemplate streaming = new JdbcTemplate(jdbc.getDataSource());
    streaming.setFetchSize(FETCH);
    streaming.query(
        CURVES,
        row -> {
          seatings.add(
              row.getObject(1, UUID.class), Channel.valueOf(row.getString(2)), floats(row, 3));
        },
        which);
    seatings.end();
  }

  private BatchCurves batch(
      String product, String tuning, List<Unit> units, float[] left, float[] right) {
    List<Integer> versions = units.stream().map(Unit::version).distinct().sorted().toList();
    List<Unit> drawn = units.stream().filter(unit -> unit.view().row() >= 0).toList();
    LimitFrame frame = LimitFrame.of(newest(units));
    return new BatchCurves(
        product,
        tuning,
        versions,
        units.stream().map(Unit::view).toList(),
        left,
        right,
        drawn.stream().mapToDouble(Unit::leftAlignment).toArray(),
        drawn.stream().mapToDouble(Unit::rightAlignment).toArray(),
        frame.golden(),
        frame.lower(),
        frame.upper(),
        frame.match(),
        frame.regions(),
        frame.smoothing());
  }

  /**
   * @return the newest limit set among the units; null without units
   */
  private StoredLimitSet newest(List<Unit> units) {
    return units.stream()
        .max(Comparator.comparingInt(Unit::version))
        .map(unit -> products.limitSet(unit.limitSet()))
        .orElse(null);
  }

  private static Instant instant(ResultSet row, int column) throws SQLException {
    return row.getObject(column, OffsetDateTime.class).toInstant();
  }

  private static double number(ResultSet row, int column) throws SQLException {
    double value = row.getDouble(column);
    return row.wasNull() ? Double.NaN : value;
  }

  private static float[] floats(ResultSet row, int column) throws SQLException {
    Float[] boxed = (Float[]) row.getArray(column).getArray();
    float[] values = new float[boxed.length];
    for (int i = 0; i < boxed.length; i++) {
      values[i] = boxed[i];
    }
    return values;
  }
}
