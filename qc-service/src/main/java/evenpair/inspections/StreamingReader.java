package evenpair.inspections;

import evenpair.tolerance.Channel;
import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Reads through a cursor: some hundred rows at a time, whatever the size of the batch. */
@Component
@Transactional(readOnly = true)
class StreamingReader implements InspectionStream {
  private static final int FETCH = 200;

  private static final String ROWS =
      """
      select i.id, i.serial, i.batch, i.product, i.tuning, i.limit_set_version, i.limit_set_digest, i.limit_set_id, i.ear_simulator,
        i.station, i.occasion, i.verdict, v.conditional, i.started_at, i.closed_at, i.valid_seatings, i.tries,
        i.left_earpiece, i.right_earpiece, v.left_alignment_db, v.right_alignment_db, v.reasons, v.regions, i.software_version,
        c.channel, c.level_db
      from inspection i join inspection_verdict v on v.inspection_id = i.id
        left join attempt a on a.inspection_id = i.id and a.valid left join attempt_channel c on c.attempt_id = a.id
      where i.state = 'CLOSED' and i.batch = ? and i.product = ? and i.tuning = ? and (?::integer is null or i.limit_set_version = ?)
      order by i.started_at, i.id, a.number, c.channel
      """;

  private static final String VERSIONS =
      """
      select distinct limit_set_version from inspection
      where state = 'CLOSED' and batch = ? and product = ? and tuning = ? order by 1
      """;

  private final JdbcTemplate jdbc;
  private final ReasonViews views;

  StreamingReader(JdbcTemplate jdbc, ReasonViews views) {
    this.jdbc = jdbc;
    this.views = views;
  }

  @Override
  public List<Integer> versions(String batch, String product, String tuning) {
    return jdbc.queryForList(VERSIONS, Integer.class, batch, product, tuning);
  }

  @Override
  public void each(
      String batch,
      String product,
      String tuning,
      Integer version,
      Consumer<StreamedInspection> taker) {
    JdbcTemplate streaming = new JdbcTemplate(jdbc.getDataSource());
    streaming.setFetchSize(FETCH);
    Gathering gathering = new Gathering(taker, LocaleContextHolder.getLocale());
    streaming.query(ROWS, gathering::add, batch, product, tuning, version, version);
    gathering.end();
  }

  /** The rows of one inspection, which follow one another. */
  private final class Gathering {
    private final Consumer<StreamedInspection> taker;
    private final Locale locale;
    private final Set<String> seen = new HashSet<>();
    private final Map<Channel, List<float[]>> levels = new EnumMap<>(Channel.class);
    private StreamedInspection open;

    Gathering(Consumer<StreamedInspection> taker, Locale locale) {
      this.taker = taker;
      this.locale = locale;
    }

    void add(ResultSet row) throws SQLException {
      UUID id = row.getObject(1, UUID.class);
      if (open == null || !open.inspection().equals(id)) {
        end();
        open = facts(row, id);
      }
      String channel = row.getString(25);
      if (channel != null) {
        levels
            .computeIfAbsent(Channel.valueOf(channel), c -> new ArrayList<>())
            .add(floats(row.getArray(26)));
      }
    }

    void end() {
      if (open != null) {
        taker.accept(withCurves(open));
        levels.clear();
        open = null;
      }
    }

    private StreamedInspection facts(ResultSet row, UUID id) throws SQLException {
      String serial = row.getString(2);
      return new StreamedInspection(
          id,
          serial,
          row.getString(3),
          row.getString(4),
          row.getString(5),
          row.getInt(6),
          row.getString(7),
          row.getObject(8, UUID.class),
          row.getString(9),
          row.getString(10),
          Occasion.valueOf(row.getString(11)).word(),
          seen.add(serial),
          row.getString(12),
          row.getBoolean(13),
          instant(row, 14),
          instant(row, 15),
          row.getInt(16),
          row.getInt(17),
          row.getString(18),
          row.getString(19),
          row.getObject(20, Double.class),
          row.getObject(21, Double.class),
          views.of(RecordJson.read(row.getString(22)), locale),
          ReasonViews.regions(RecordJson.readRegions(row.getString(23))),
          null,
          null,
          row.getString(24));
    }

    private StreamedInspection withCurves(StreamedInspection facts) {
      return new StreamedInspection(
          facts.inspection(),
          facts.serial(),
          facts.batch(),
          facts.product(),
          facts.tuning(),
          facts.limitSetVersion(),
          facts.limitSetDigest(),
          facts.limitSetId(),
          facts.earSimulator(),
          facts.station(),
          facts.occasion(),
          facts.firstPass(),
          facts.verdict(),
          facts.conditional(),
          facts.measuredAt(),
          facts.closedAt(),
          facts.validSeatings(),
          facts.tries(),
          facts.leftEarpiece(),
          facts.rightEarpiece(),
          facts.leftAlignmentDb(),
          facts.rightAlignmentDb(),
          facts.reasons(),
          facts.regions(),
          mean(Channel.LEFT),
          mean(Channel.RIGHT),
          facts.softwareVersion());
    }

    private float[] mean(Channel channel) {
      List<float[]> seatings = levels.get(channel);
      return seatings == null ? null : Combination.level(seatings).toFloats();
    }
  }

  private static Instant instant(ResultSet row, int column) throws SQLException {
    OffsetDateTime time = row.getObject(column, OffsetDateTime.class);
    return time == null ? null : time.toInstant();
  }

  private static float[] floats(Array array) throws SQLException {
    Float[] boxed = (Float[]) array.getArray();
    float[] values = new float[boxed.length];
    for (int i = 0; i < boxed.length; i++) {
      values[i] = boxed[i];
    }
    return values;
  }
}
