package evenpair.pairing;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The module's facade. */
@Service
@Transactional(readOnly = true)
class StoredPairings implements Pairings {
  private final JdbcTemplate jdbc;

  StoredPairings(JdbcTemplate jdbc) {
    this.jdbc = jdbc;
  }

  @Override
  public List<Proposed> ofUnit(String serial) {
    return jdbc.query(
        """
        select g.id, g.created_at, g.created_by, p.number, p.serial, p.right_serial, p.left_earpiece, p.right_earpiece, p.as_built, p.cost
        from pairing_pair p join pairing g on g.id = p.pairing_id
        where p.serial = ? or p.right_serial = ? order by g.id, p.number
        """,
        (row, n) ->
            new Proposed(
                row.getObject(1, UUID.class),
                row.getObject(2, OffsetDateTime.class).toInstant(),
                row.getObject(3, UUID.class),
                row.getInt(4),
                row.getString(5),
                row.getString(6),
                row.getString(7),
                row.getString(8),
                row.getBoolean(9),
                row.getDouble(10)),
        serial,
        serial);
  }
}
