package evenpair.traceability;

import evenpair.acoustics.Curve;
import evenpair.traceability.outside.Comparison;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Rows of {@code outside_report} and, beside them, who published it. */
@Component
class OutsideReportTable {
  private static final JsonMapper JSON = JsonMapper.builder().build();
  private static final String SELECT =
      """
      select r.*, s.name as source_name, s.published_on
      from outside_report r left join outside_report_source s on s.report_id = r.id
      """;

  private final JdbcClient jdbc;

  OutsideReportTable(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  /** A file in the capture store. */
  record Kept(String part, String sha256) {}

  /**
   * @param left null if only an average is known
   */
  record Row(
      UUID id,
      String serial,
      UUID inspection,
      String product,
      String tuning,
      Instant receivedAt,
      UUID receivedBy,
      OutsideRequest.Rig rig,
      List<Kept> files,
      Curve left,
      Curve right,
      Curve average,
      int seatings,
      Comparison comparison,
      OutsideRequest.Source source) {}

  void add(Row row, String softwareVersion) {
    jdbc.sql(
            """
            insert into outside_report (id, serial, inspection_id, product, tuning, received_at, received_by, rig, files,
              left_db, right_db, average_db, comparison, software_version)
            values (?, ?, ?, ?, ?, ?, ?, ?::jsonb, ?::jsonb, ?, ?, ?, ?::jsonb, ?)
            """)
        .params(
            row.id(),
            row.serial(),
            row.inspection(),
            row.product(),
            row.tuning(),
            row.receivedAt().atOffset(ZoneOffset.UTC),
            row.receivedBy(),
            JSON.writeValueAsString(row.rig()),
            JSON.writeValueAsString(row.files()),
            floats(row.left()),
            floats(row.right()),
            floats(row.average()),
            JSON.writeValueAsString(row.comparison()),
            softwareVersion)
        .update();
    if (row.source() != null
        && (row.source().name() != null || row.source().publishedOn() != null)) {
      jdbc.sql("insert into outside_report_source (report_id, name, published_on) values (?, ?, ?)")
          .params(row.id(), row.source().name(), row.source().publishedOn())
          .update();
    }
  }

  Optional<Row> find(UUID id) {
    return jdbc.sql(SELECT + " where r.id = ?").param(id).query(OutsideReportTable::row).optional();
  }

  /**
   * @return newest first
   */
  List<Row> ofUnit(String serial) {
    return jdbc.sql(SELECT + " where r.serial = ? order by r.id desc")
        .param(serial)
        .query(OutsideReportTable::row)
        .list();
  }

  /** Forgets who published it. */
  void eraseSource(UUID id) {
    jdbc.sql("delete from outside_report_source where report_id = ?").param(id).update();
  }

  private static Row row(ResultSet row, int index) throws SQLException {
    List<Kept> files = List.of(JSON.readValue(row.getString("files"), Kept[].class));
    String name = row.getString("source_name");
    LocalDate on = row.getObject("published_on", LocalDate.class);
    Timestamp at = row.getTimestamp("received_at");
    int seatings =
        (int)
            files.stream().filter(f -> f.part().equals("left") || f.part().equals("both")).count();
    return new Row(
        row.getObject("id", UUID.class),
        row.getString("serial"),
        row.getObject("inspection_id", UUID.class),
        row.getString("product"),
        row.getString("tuning"),
        at.toInstant(),
        row.getObject("received_by", UUID.class),
        JSON.readValue(row.getString("rig"), OutsideRequest.Rig.class),
        files,
        curve(row, "left_db"),
        curve(row, "right_db"),
        curve(row, "average_db"),
        seatings,
        JSON.readValue(row.getString("comparison"), Comparison.class),
        name == null && on == null ? null : new OutsideRequest.Source(name, on));
  }

  private static float[] floats(Curve curve) {
    return curve == null ? null : curve.toFloats();
  }

  private static Curve curve(ResultSet row, String column) throws SQLException {
    java.sql.Array stored = row.getArray(column);
    if (stored == null) {
      return null;
    }
    Float[] boxed = (Float[]) stored.getArray();
    float[] values = new float[boxed.length];
    for (int i = 0; i < values.length; i++) {
      values[i] = boxed[i];
    }
    return Curve.ofFloats(values);
  }
}
