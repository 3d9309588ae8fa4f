package evenpair.traceability;

import evenpair.inspections.KnownUnits.KnownUnit;
import evenpair.ledger.Evidence;
import evenpair.ledger.Ledger;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Dispatches and their units; insert only, each sealed with all of its rows. */
@Component
@Transactional(readOnly = true)
class DispatchStore implements Dispatches {
  static final String KIND = "dispatch";

  private static final String HEADS =
      "select id, reference, shipped_at, recorded_at, person, units, digest from dispatch d";

  private final JdbcTemplate jdbc;
  private final Ledger ledger;

  DispatchStore(JdbcTemplate jdbc, Ledger ledger) {
    this.jdbc = jdbc;
    this.ledger = ledger;
  }

  /**
   * A dispatch without its units.
   *
   * @param person who recorded it; null if a program did
   */
  record Head(
      UUID id,
      String reference,
      Instant shippedAt,
      Instant recordedAt,
      UUID person,
      int units,
      String digest) {}

  /** What the ledger seals; no name and no free text but the delivery's own number. */
  private record Entry(
      UUID dispatch,
      String reference,
      Instant shippedAt,
      Instant recordedAt,
      UUID person,
      List<String> serials,
      String digest) {}

  /**
   * @throws org.springframework.dao.DuplicateKeyException if the reference is taken
   */
  @Transactional
  public void add(Head head, List<KnownUnit> units) {
    jdbc.update(
        "insert into dispatch (id, reference, shipped_at, recorded_at, person, units, digest) values (?, ?, ?, ?, ?, ?, ?)",
        head.id(),
        head.reference(),
        head.shippedAt().atOffset(ZoneOffset.UTC),
        head.recordedAt().atOffset(ZoneOffset.UTC),
        head.person(),
        units.size(),
        head.digest());
    List<Object[]> rows = new ArrayList<>();
    for (int i = 0; i < units.size(); i++) {
      rows.add(new Object[] {head.id(), i, units.get(i).serial(), units.get(i).verdict()});
    }
    jdbc.batchUpdate(
        "insert into dispatch_unit (dispatch_id, position, serial, verdict) values (?, ?, ?, ?)",
        rows);
    ledger.append(
        KIND,
        head.id(),
        new Entry(
            head.id(),
            head.reference(),
            head.shippedAt(),
            head.recordedAt(),
            head.person(),
            units.stream().map(KnownUnit::serial).toList(),
            head.digest()),
        Evidence.ofRows("dispatch", "id", head.id())
            .andRows("dispatch_unit", "dispatch_id", head.id()));
  }

  public Optional<Head> byReference(String reference) {
    return jdbc.query(HEADS + " where reference = ?", (row, n) -> head(row), reference).stream()
        .findFirst();
  }

  public Optional<Head> find(UUID id) {
    return jdbc.query(HEADS + " where id = ?", (row, n) -> head(row), id).stream().findFirst();
  }

  /**
   * @param serial null for every unit's
   * @param before only those recorded before this one; null for the newest
   */
  public List<Head> newest(String serial, UUID before, int rows) {
    return jdbc.query(
        HEADS
            + " where (?::text is null or exists (select 1 from dispatch_unit u where u.dispatch_id = d.id and u.serial = ?))"
            + " and (?::uuid is null or id < ?) order by id desc limit ?",
        (row, n) -> head(row),
        serial,
        serial,
        before,
        before,
        rows);
  }

  public List<DispatchJson.Unit> units(UUID dispatch) {
    return jdbc.query(
        "select serial, verdict from dispatch_unit where dispatch_id = ? order by position",
        (row, n) -> new DispatchJson.Unit(row.getString(1), row.getString(2)),
        dispatch);
  }

  @Override
  public Map<String, List<Shipped>> of(Collection<String> serials) {
    Map<String, List<Shipped>> found = new HashMap<>();
    jdbc.query(
        """
        select u.serial, d.id, d.reference, d.shipped_at, d.recorded_at, u.verdict, d.person
        from dispatch_unit u join dispatch d on d.id = u.dispatch_id where u.serial = any(?) order by d.shipped_at, d.id
        """,
        row -> {
          found
              .computeIfAbsent(row.getString(1), s -> new ArrayList<>())
              .add(
                  new Shipped(
                      row.getObject(2, UUID.class),
                      row.getString(3),
                      instant(row, 4),
                      instant(row, 5),
                      row.getString(6),
                      row.getObject(7, UUID.class)));
        },
        (Object) serials.toArray(String[]::new));
    return found;
  }

  private static Head head(ResultSet row) throws SQLException {
    return new Head(
        row.getObject(1, UUID.class),
        row.getString(2),
        instant(row, 3),
        instant(row, 4),
        row.getObject(5, UUID.class),
        row.getInt(6),
        row.getString(7));
  }

  private static Instant instant(ResultSet row, int column) throws SQLException {
    return row.getObject(column, OffsetDateTime.class).toInstant();
  }
}
