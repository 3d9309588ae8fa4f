package evenpair.inspections;

import evenpair.tolerance.Channel;
import evenpair.tolerance.MeasuredChannel;
import evenpair.tolerance.MeasuredPair;
import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Reads stored levels and phases by plain JDBC and combines seatings by the same code as judging.
 */
@Component
@Transactional(readOnly = true)
class MeasuredCurveReader implements MeasuredCurves {
  private static final String SELECT =
      """
      select i.id, i.serial, i.batch, i.product, i.tuning, i.station, i.state, i.verdict, i.limit_set_id, i.started_at,
        c.channel, c.level_db, c.phase_deg
      from inspection i join attempt a on a.inspection_id = i.id and a.valid join attempt_channel c on c.attempt_id = a.id
      """;

  private static final String ORDER = " order by i.started_at, i.id, a.number";

  private final JdbcTemplate jdbc;

  MeasuredCurveReader(JdbcTemplate jdbc) {
    this.jdbc = jdbc;
  }

  @Override
  public List<MeasuredUnit> of(Collection<UUID> inspections) {
    UUID[] ids = inspections.toArray(UUID[]::new);
    return read("where i.id = any(?)", (Object) ids);
  }

  @Override
  public List<MeasuredUnit> ofBatch(String batch, String product, String tuning) {
    return read(
        "where i.state = 'CLOSED' and i.batch = ? and i.product = ? and i.tuning = ?",
        batch,
        product,
        tuning);
  }

  private List<MeasuredUnit> read(String which, Object... values) {
    Map<UUID, Gathered> gathered = new LinkedHashMap<>();
    jdbc.query(
        SELECT + which + ORDER,
        row -> {
          UUID id = row.getObject(1, UUID.class);
          Gathered unit = gathered.get(id);
          if (unit == null) {
            unit = new Gathered(unit(row));
            gathered.put(id, unit);
          }
          unit.add(Channel.valueOf(row.getString(11)), floats(row, 12), floats(row, 13));
        },
        values);
    return gathered.values().stream().map(Gathered::combined).toList();
  }

  private static MeasuredUnit unit(ResultSet row) throws SQLException {
    String verdict = row.getString(8);
    return new MeasuredUnit(
        row.getObject(1, UUID.class),
        row.getString(2),
        row.getString(3),
        row.getString(4),
        row.getString(5),
        row.getString(6),
        InspectionState.valueOf(row.getString(7)).word(),
        verdict,
        row.getObject(9, UUID.class),
        row.getObject(10, OffsetDateTime.class).toInstant(),
        null);
  }

  private static float[] floats(ResultSet row, int column) throws SQLException {
    Array array = row.getArray(column);
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

  /** The seatings of one inspection as they come in, in the order of their attempts. */
  private static final class Gathered {
    private final MeasuredUnit unit;
    private final Map<Channel, List<float[]>> levels = new EnumMap<>(Channel.class);
    private final Map<Channel, List<float[]>> phases = new EnumMap<>(Channel.class);

    Gathered(MeasuredUnit unit) {
      this.unit = unit;
    }

    void add(Channel channel, float[] level, float[] phase) {
      levels.computeIfAbsent(channel, c -> new ArrayList<>()).add(level);
      phases.computeIfAbsent(channel, c -> new ArrayList<>()).add(phase);
    }

    MeasuredUnit combined() {
      return new MeasuredUnit(
          unit.inspection(),
          unit.serial(),
          unit.batch(),
          unit.product(),
          unit.tuning(),
          unit.station(),
          unit.state(),
          unit.verdict(),
          unit.limitSetId(),
          unit.startedAt(),
          new MeasuredPair(channel(Channel.LEFT), channel(Channel.RIGHT)));
    }

    private MeasuredChannel channel(Channel channel) {
      return new MeasuredChannel(
          Combination.level(levels.get(channel)), Combination.phase(phases.get(channel)));
    }
  }
}
