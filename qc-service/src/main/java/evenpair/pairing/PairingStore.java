package evenpair.pairing;

import evenpair.pairing.Regrouping.Made;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.BatchPreparedStatementSetter;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** Keeps proposals. */
@Component
class PairingStore {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  private static final String HEAD =
      """
      select id, product, tuning, limit_set_id, limit_set_version, limit_set_digest, guarded, created_at, request, lefts, rights,
        as_built_pairs, as_built_feasible, as_built_cost, proposed_pairs, proposed_cost, seconds, left_out, alone, take_back
      from pairing
      """;

  private static final String PAIRS =
      """
      select number, serial, right_serial, left_earpiece, right_earpiece, left_inspection, right_inspection, as_built, cost,
        match_share, at_hz, difference_db, limit_db, balance_db, balance_limit_db, balance_share
      from pairing_pair where pairing_id = ?
      """;

  private final JdbcTemplate jdbc;

  PairingStore(JdbcTemplate jdbc) {
    this.jdbc = jdbc;
  }

  /**
   * A stored proposal without its pairs.
   *
   * @param asBuilt pairs of the pool as they were built, and how many of them keep the limits
   */
  record Head(
      UUID id,
      String product,
      String tuning,
      UUID limitSet,
      int version,
      String digest,
      boolean guarded,
      Instant createdAt,
      PairingJson.Request request,
      int lefts,
      int rights,
      int asBuilt,
      int asBuiltFeasible,
      double asBuiltCost,
      int proposed,
      double proposedCost,
      double seconds,
      List<LeftOut> leftOut,
      List<Alone> alone,
      List<String> takeBack) {}

  record Alone(String serial, String channel, String earpiece, UUID inspection) {}

  /** A stored pair. */
  record Row(
      int number,
      String serial,
      String rightSerial,
      String leftEarpiece,
      String rightEarpiece,
      UUID leftInspection,
      UUID rightInspection,
      boolean asBuilt,
      double cost,
      double matchShare,
      Double atHz,
      Double differenceDb,
      Double limitDb,
      double balanceDb,
      double balanceLimitDb,
      double balanceShare) {}

  /**
   * @param by who asked for it; null if nobody is known
   * @param frequencies of the grid, to say where a pair comes nearest to its limit
   */
  @Transactional
  public void add(Head head, UUID by, List<Made> pairs, double[] frequencies) {
    jdbc.update(
        """
        insert into pairing (id, product, tuning, limit_set_id, limit_set_version, limit_set_digest, guarded, created_at, created_by, request,
          lefts, rights, as_built_pairs, as_built_feasible, as_built_cost, proposed_pairs, proposed_cost, seconds, left_out, alone,
          take_back)
        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?::jsonb, ?, ?, ?, ?, ?, ?, ?, ?, ?::jsonb, ?::jsonb, ?::jsonb)
        """,
        head.id(),
        head.product(),
        head.tuning(),
        head.limitSet(),
        head.version(),
        head.digest(),
        head.guarded(),
        head.createdAt().atOffset(ZoneOffset.UTC),
        by,
        JSON.writeValueAsString(head.request()),
        head.lefts(),
        head.rights(),
        head.asBuilt(),
        head.asBuiltFeasible(),
        head.asBuiltCost(),
        head.proposed(),
        head.proposedCost(),
        head.seconds(),
        JSON.writeValueAsString(head.leftOut()),
        JSON.writeValueAsString(head.alone()),
        JSON.writeValueAsString(head.takeBack()));
    addPairs(head.id(), pairs, frequencies);
  }

  private void addPairs(UUID pairing, List<Made> pairs, double[] frequencies) {
    jdbc.batchUpdate(
        "insert into pairing_pair values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        new BatchPreparedStatementSetter() {
          @Override
          public void setValues(java.sql.PreparedStatement row, int i) throws SQLException {
            Made made = pairs.get(i);
            PairCost cost = made.cost();
            boolean matched = cost.worst() >= 0;
            row.setObject(1, pairing);
            row.setInt(2, i + 1);
            row.setString(3, made.left().from().serial());
            row.setString(4, made.right().from().serial());
            row.setString(5, made.left().name());
            row.setString(6, made.right().name());
            row.setObject(7, made.left().from().inspection());
            row.setObject(8, made.right().from().inspection());
            row.setBoolean(9, made.asBuilt());
            row.setDouble(10, cost.cost());
            row.setDouble(11, cost.matchRatio());
            row.setObject(12, matched ? frequencies[cost.worst()] : null);
            row.setObject(13, matched ? cost.differenceDb() : null);
            row.setObject(14, matched ? cost.limitDb() : null);
            row.setDouble(15, cost.balanceDb());
            row.setDouble(16, cost.balanceLimitDb());
            row.setDouble(17, cost.balanceRatio());
          }

          @Override
          public int getBatchSize() {
            return pairs.size();
          }
        });
  }

  @Transactional(readOnly = true)
  public Optional<Head> find(UUID id) {
    return jdbc.query(HEAD + " where id = ?", (row, n) -> head(row), id).stream().findFirst();
  }

  /**
   * @param before only those made before this one; null for the newest
   */
  @Transactional(readOnly = true)
  public List<Head> newest(String product, String tuning, UUID before, int rows) {
    return jdbc.query(
        HEAD
            + " where (?::text is null or product = ?) and (?::text is null or tuning = ?)"
            + " and (?::uuid is null or id < ?) order by id desc limit ?",
        (row, n) -> head(row),
        product,
        product,
        tuning,
        tuning,
        before,
        before,
        rows);
  }

  @Transactional(readOnly = true)
  public List<Row> pairs(UUID pairing) {
    return jdbc.query(PAIRS + " order by number", (row, n) -> pair(row), pairing);
  }

  @Transactional(readOnly = true)
  public Optional<Row> pair(UUID pairing, int number) {
    return jdbc.query(PAIRS + " and number = ?", (row, n) -> pair(row), pairing, number).stream()
        .findFirst();
  }

  private static Head head(ResultSet row) throws SQLException {
    return new Head(
        row.getObject(1, UUID.class),
        row.getString(2),
        row.getString(3),
        row.getObject(4, UUID.class),
        row.getInt(5),
        row.getString(6),
        row.getBoolean(7),
        row.getObject(8, OffsetDateTime.class).toInstant(),
        JSON.readValue(row.getString(9), PairingJson.Request.class),
        row.getInt(10),
        row.getInt(11),
        row.getInt(12),
        row.getInt(13),
        row.getDouble(14),
        row.getInt(15),
        row.getDouble(16),
        row.getDouble(17),
        JSON.readValue(row.getString(18), new TypeReference<List<LeftOut>>() {}),
        JSON.readValue(row.getString(19), new TypeReference<List<Alone>>() {}),
        JSON.readValue(row.getString(20), new TypeReference<List<String>>() {}));
  }

  private static Row pair(ResultSet row) throws SQLException {
    return new Row(
        row.getInt(1),
        row.getString(2),
        row.getString(3),
        row.getString(4),
        row.getString(5),
        row.getObject(6, UUID.class),
        row.getObject(7, UUID.class),
        row.getBoolean(8),
        row.getDouble(9),
        row.getDouble(10),
        row.getObject(11, Double.class),
        row.getObject(12, Double.class),
        row.getObject(13, Double.class),
        row.getDouble(14),
        row.getDouble(15),
        row.getDouble(16));
  }
}
