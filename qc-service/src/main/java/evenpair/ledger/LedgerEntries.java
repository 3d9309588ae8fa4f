package evenpair.ledger;

import evenpair.web.Ids;
import jakarta.persistence.EntityManager;
import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * Entries in the table {@code ledger_entry}, written in the transaction of the record that they
 * seal.
 */
@Component
class LedgerEntries implements Ledger {
  private static final HexFormat HEX = HexFormat.of();

  private final JdbcClient jdbc;
  private final Ids ids;
  private final Clock clock;
  private final Sequencer sequencer;
  private final EntityManager entities;
  private final RowDigests rows;
  private final SigningKeys keys;

  LedgerEntries(
      JdbcClient jdbc,
      Ids ids,
      Clock clock,
      Sequencer sequencer,
      EntityManager entities,
      RowDigests rows,
      SigningKeys keys) {
    this.jdbc = jdbc;
    this.entities = entities;
    this.rows = rows;
    this.keys = keys;
    this.ids = ids;
    this.clock = clock;
    this.sequencer = sequencer;
  }

  @Override
  @Transactional(propagation = Propagation.MANDATORY)
  public UUID append(String kind, UUID subject, Object content) {
    return append(kind, subject, content, Evidence.NONE);
  }

  @Override
  @Transactional(propagation = Propagation.MANDATORY)
  public UUID append(String kind, UUID subject, Object content, Evidence evidence) {
    UUID id = ids.next();
    append(id, kind, subject, content, evidence);
    return id;
  }

  @Override
  @Transactional(propagation = Propagation.MANDATORY)
  public void append(UUID id, String kind, UUID subject, Object content, Evidence evidence) {
    Instant at = clock.instant().truncatedTo(ChronoUnit.MICROS);
    byte[] bytes = CanonicalJson.of(entry(id, kind, subject, at, content, evidence));
    jdbc.sql(
            "insert into ledger_entry (id, kind, subject, content, digest, at) values (?, ?, ?, ?, ?, ?)")
        .params(id, kind, subject, bytes, Digests.sha256(bytes), at.atOffset(ZoneOffset.UTC))
        .update();
    jdbc.sql("insert into ledger_waiting (entry) values (?)").param(id).update();
    TransactionSynchronizationManager.registerSynchronization(
        new TransactionSynchronization() {
          @Override
          public void afterCommit() {
            sequencer.entryCommitted();
          }
        });
  }

  private Map<String, Object> entry(
      UUID id, String kind, UUID subject, Instant at, Object content, Evidence evidence) {
    Map<String, Object> entry = new LinkedHashMap<>();
    entry.put("id", id);
    entry.put("kind", kind);
    entry.put("subject", subject);
    entry.put("at", at);
    entry.put("content", content);
    if (!evidence.rows().isEmpty()) {
      entities.flush();
      entry.put("rows", rows.described(evidence.rows()));
    }
    if (!evidence.files().isEmpty()) {
      entry.put("files", evidence.files());
    }
    return entry;
  }

  @Override
  @Transactional(readOnly = true)
  public Optional<Seal> sealOf(String kind, UUID subject) {
    return jdbc.sql(
            """
            select e.id, e.digest as entry_digest, l.block, l.digest as leaf_digest, b.key_id
            from (select id, digest from ledger_entry where subject = ? and kind = ? order by at desc, id desc limit 1) e
            join ledger_leaf l on l.entry = e.id
            join ledger_block b on b.number = l.block
            """)
        .params(subject, kind)
        .query(LedgerEntries::seal)
        .optional();
  }

  @Override
  @Transactional(readOnly = true)
  public Optional<Sealed> byCode(String code) {
    return jdbc.sql(
            """
            select e.id, e.kind, e.subject, e.digest as entry_digest, l.block, l.digest as leaf_digest, b.key_id
            from ledger_leaf l
            join ledger_entry e on e.id = l.entry
            join ledger_block b on b.number = l.block
            where l.digest between ? and ? order by l.digest limit 1
            """)
        .params(RecordCode.lowest(code), RecordCode.highest(code))
        .query(
            (row, index) ->
                new Sealed(
                    row.getString("kind"), row.getObject("subject", UUID.class), seal(row, index)))
        .optional();
  }

  @Override
  public Signed sign(String text) {
    if (text.startsWith("{")) {
      throw new IllegalArgumentException("a text that looks like a block is not signed");
    }
    return new Signed(keys.ownId(), keys.sign(text.getBytes(StandardCharsets.UTF_8)));
  }

  @Override
  public Map<String, byte[]> publicKeys() {
    return keys.publicKeys();
  }

  private static Seal seal(ResultSet row, int index) throws SQLException {
    return new Seal(
        row.getObject("id", UUID.class),
        HEX.formatHex(row.getBytes("entry_digest")),
        row.getLong("block"),
        RecordCode.of(row.getBytes("leaf_digest")),
        row.getString("key_id"));
  }
}
