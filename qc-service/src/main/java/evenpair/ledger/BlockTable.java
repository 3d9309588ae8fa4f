package evenpair.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads and adds rows of {@code ledger_block}. */
@Component
class BlockTable {
  private static final String COLUMNS =
      "number, previous, root, entries, at, key_id, signature, digest";

  private final JdbcClient jdbc;

  BlockTable(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  Optional<Block> last() {
    return jdbc.sql("select " + COLUMNS + " from ledger_block order by number desc limit 1")
        .query(BlockTable::block)
        .optional();
  }

  /**
   * @return up to {@code limit} blocks behind that number, in order
   */
  List<Block> after(long number, int limit) {
    return jdbc.sql(
            "select " + COLUMNS + " from ledger_block where number > ? order by number limit ?")
        .params(number, limit)
        .query(BlockTable::block)
        .list();
  }

  Optional<Block> find(long number) {
    return jdbc.sql("select " + COLUMNS + " from ledger_block where number = ?")
        .param(number)
        .query(BlockTable::block)
        .optional();
  }

  void add(Block block) {
    BlockHead head = block.head();
    jdbc.sql("insert into ledger_block (" + COLUMNS + ") values (?, ?, ?, ?, ?, ?, ?, ?)")
        .params(
            head.number(),
            head.previous(),
            head.root(),
            head.entries(),
            head.at().atOffset(ZoneOffset.UTC),
            head.keyId(),
            block.signature(),
            block.digest())
        .update();
  }

  private static Block block(ResultSet row, int index) throws SQLException {
    BlockHead head =
        new BlockHead(
            row.getLong("number"),
            row.getBytes("previous"),
            row.getBytes("root"),
            row.getInt("entries"),
            row.getObject("at", OffsetDateTime.class).toInstant(),
            row.getString("key_id"));
    return new Block(head, row.getBytes("signature"), row.getBytes("digest"));
  }
}
