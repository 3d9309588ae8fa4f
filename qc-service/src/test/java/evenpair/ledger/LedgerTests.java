package evenpair.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenpair.EvenpairDatabaseTest;
import evenpair.TestDatabase;
import evenpair.web.DataFolder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.IllegalTransactionStateException;
import org.springframework.transaction.support.TransactionTemplate;

/** On a database of its own: it tampers. */
@EvenpairDatabaseTest(properties = "test.own=ledger")
class LedgerTests {
  @Autowired Ledger ledger;
  @Autowired Sequencer sequencer;
  @Autowired LedgerCheck check;
  @Autowired JdbcClient jdbc;
  @Autowired TransactionTemplate transaction;
  @Autowired DataFolder data;
  @Autowired TestDatabase.Access database;

  private UUID append(UUID subject, Object content) {
    return transaction.execute(status -> ledger.append("test-sealed", subject, content));
  }

  private UUID sealed(Object content) {
    UUID entry = append(UUID.randomUUID(), content);
    seal();
    return entry;
  }

  /**
   * The scheduled sequencer may be at it in this moment; then ours steps back, and has to come
   * again.
   */
  private void seal() {
    do {
      sequencer.run();
    } while (jdbc.sql("select count(*) from ledger_waiting").query(Integer.class).single() > 0);
    sequencer.run(); // heads of a block that the other one made
  }

  /**
   * As the superuser with triggers and foreign keys off; undone afterwards, so that the next test
   * finds an intact ledger.
   */
  private LedgerCheck.Failure failureAfter(String tamper, String undo) throws Exception {
    try (Connection connection = database.superuser().getConnection();
        Statement statement = connection.createStatement()) {
      statement.execute("set session_replication_role = replica");
      assertThat(statement.executeUpdate(tamper)).isPositive();
      try {
        LedgerCheck.Report report = check.check();
        assertThat(report.intact()).isFalse();
        return report.firstFailure();
      } finally {
        statement.executeUpdate(undo);
        assertThat(check.check().intact()).isTrue();
      }
    }
  }

  @Nested
  class Appending {
    @Test
    void needsATransaction() {
      assertThatThrownBy(() -> ledger.append("test-sealed", UUID.randomUUID(), Map.of()))
          .isInstanceOf(IllegalTransactionStateException.class);
    }

    @Test
    void vanishesWithItsTransaction() {
      UUID subject = UUID.randomUUID();
      transaction.executeWithoutResult(
          status -> {
            ledger.append("test-sealed", subject, Map.of("a", 1));
            status.setRollbackOnly();
          });
      seal();
      assertThat(ledger.sealOf("test-sealed", subject)).isEmpty();
    }

    @Test
    void isSealedByTheNextBlock() {
      UUID subject = UUID.randomUUID();
      UUID entry =
          append(
              subject,
              Map.of("verdict", "PASS", "at", Instant.parse("2026-11-25T07:00:00.123456789Z")));
      seal();
      Ledger.Seal seal = ledger.sealOf("test-sealed", subject).orElseThrow();
      assertThat(seal.entryId()).isEqualTo(entry);
      assertThat(seal.code()).matches("([0-9A-HJKMNP-TV-Z]{4}-){5}[0-9A-HJKMNP-TV-Z*~$=U]");
      String content =
          new String(
              jdbc.sql("select content from ledger_entry where id = ?")
                  .param(entry)
                  .query(byte[].class)
                  .single());
      assertThat(content)
          .contains("\"content\":{\"at\":\"2026-11-25T07:00:00.123456Z\",\"verdict\":\"PASS\"}");
      assertThat(seal.entryDigest()).isEqualTo(Digests.of(content.getBytes()));
    }

    @Test
    void speaksOfTheNewestEntryOfASubject() {
      UUID subject = UUID.randomUUID();
      append(subject, Map.of("n", 1));
      UUID second = append(subject, Map.of("n", 2));
      seal();
      assertThat(ledger.sealOf("test-sealed", subject)).map(Ledger.Seal::entryId).hasValue(second);
    }
  }

  @Nested
  class TheDatabase {
    @Test
    void refusesEveryChangeByTheServicesRole() {
      UUID entry = sealed(Map.of("a", 1));
      for (String change :
          List.of(
              "update ledger_entry set kind = 'other' where id = '" + entry + "'",
              "delete from ledger_entry where id = '" + entry + "'",
              "truncate ledger_entry cascade",
              "update ledger_block set entries = 9",
              "delete from ledger_leaf")) {
        assertThatThrownBy(() -> jdbc.sql(change).update())
            .as(change)
            .hasStackTraceContaining("permission denied");
      }
    }

    @Test
    void refusesEveryChangeEvenByTheOwner() throws Exception {
      UUID entry = sealed(Map.of("a", 1));
      try (Connection connection = database.owner().getConnection();
          Statement statement = connection.createStatement()) {
        // The owner's own privileges were not taken away, so what stops it here is the trigger.
        for (String change :
            List.of(
                "update ledger_entry set kind = 'other' where id = '" + entry + "'",
                "delete from ledger_leaf where entry = '" + entry + "'",
                "truncate ledger_block cascade")) {
          assertThatThrownBy(() -> statement.execute(change))
              .as(change)
              .hasMessageContaining("is insert-only");
        }
      }
    }
  }

  @Nested
  class Sealing {
    @Test
    void putsEachEntryIntoOneBlockWhenSequencersRunAtOnce() throws Exception {
      List<UUID> entries = new ArrayList<>();
      for (int i = 0; i < 40; i++) {
        entries.add(append(UUID.randomUUID(), Map.of("n", i)));
      }
      ExecutorService pool = Executors.newFixedThreadPool(4);
      try {
        List<Callable<Integer>> jobs =
            List.of(
                sequencer::sealOneBlock,
                sequencer::sealOneBlock,
                sequencer::sealOneBlock,
                sequencer::sealOneBlock);
        for (Future<Integer> job : pool.invokeAll(jobs)) {
          job.get(); // none of them fails
        }
      } finally {
        pool.shutdownNow();
      }
      seal(); // whatever a sequencer that found the lock taken has left
      assertThat(
              jdbc.sql("select count(*) from ledger_leaf where entry in (:entries)")
                  .param("entries", entries)
                  .query(Integer.class)
                  .single())
          .isEqualTo(40);
      assertThat(check.check().intact()).isTrue();
    }

    @Test
    void writesSignedHeadsOutsideTheDatabase() throws Exception {
      sealed(Map.of("a", 1));
      long blocks = jdbc.sql("select max(number) from ledger_block").query(Long.class).single();
      List<String> heads = Files.readAllLines(data.root().resolve("heads/heads.jsonl"));
      assertThat(heads).hasSizeGreaterThanOrEqualTo((int) blocks);
      assertThat(heads.get((int) blocks - 1))
          .contains("\"block\":" + blocks + ",", "\"signature\":\"", "\"digest\":\"");
    }

    @Test
    void mendsAHeadLineThatACrashCutShort(@Autowired BlockTable blocks) throws Exception {
      sealed(Map.of("a", 1));
      Path folder = Files.createTempDirectory("heads");
      DataFolder other = new DataFolder(folder);
      new HeadsFile(other).witness(blocks);
      Path file = folder.resolve("heads/heads.jsonl");
      String whole = Files.readString(file);
      Files.writeString(
          file, whole.substring(0, whole.length() - 30)); // the last line lacks its end
      new HeadsFile(other).witness(blocks);
      assertThat(Files.readString(file)).startsWith(whole);
    }
  }

  @Nested
  class Checking {
    @Test
    void findsAnUntouchedLedgerIntact() {
      sealed(Map.of("a", 1));
      LedgerCheck.Report report = check.check();
      assertThat(report.intact()).isTrue();
      assertThat(report.blocks()).isPositive();
      assertThat(report.entries()).isGreaterThanOrEqualTo(report.blocks());
    }

    @Test
    void namesAnEntryWhoseContentChangedByOneByte() throws Exception {
      UUID entry = sealed(Map.of("verdict", "FAIL"));
      String row = " where id = '" + entry + "'";
      // XOR with 1 twice gives the old byte again, so the same statement undoes it.
      String flip =
          "update ledger_entry set content = set_byte(content, 20, get_byte(content, 20) # 1)"
              + row;
      LedgerCheck.Failure failure = failureAfter(flip, flip);
      assertThat(failure.entry()).isEqualTo(entry);
      assertThat(failure.problem()).contains(entry.toString(), "was changed");
    }

    @Test
    void namesAnEntryWhoseColumnsSayOtherThanItsContent() throws Exception {
      UUID entry = sealed(Map.of("a", 1));
      String row = " where id = '" + entry + "'";
      LedgerCheck.Failure failure =
          failureAfter(
              "update ledger_entry set kind = 'another-kind'" + row,
              "update ledger_entry set kind = 'test-sealed'" + row);
      assertThat(failure.entry()).isEqualTo(entry);
      assertThat(failure.problem()).contains("its columns say other than its content");
    }

    @Test
    void namesAnEntryThatIsMissing() throws Exception {
      UUID entry = sealed(Map.of("a", 1));
      UUID hidden = UUID.randomUUID();
      LedgerCheck.Failure failure =
          failureAfter(
              "update ledger_entry set id = '" + hidden + "' where id = '" + entry + "'",
              "update ledger_entry set id = '" + entry + "' where id = '" + hidden + "'");
      assertThat(failure.entry()).isEqualTo(entry);
      assertThat(failure.problem()).contains("is missing");
    }

    @Test
    void namesABlockThatWasChanged() throws Exception {
      sealed(Map.of("a", 1));
      long number = jdbc.sql("select max(number) from ledger_block").query(Long.class).single();
      LedgerCheck.Failure failure =
          failureAfter(
              "update ledger_block set entries = entries + 1 where number = " + number,
              "update ledger_block set entries = entries - 1 where number = " + number);
      assertThat(failure.block()).isEqualTo(number);
      assertThat(failure.problem()).contains("block " + number + " was changed");
    }

    @Test
    void namesASignatureThatDoesNotHold() throws Exception {
      sealed(Map.of("a", 1));
      long number = jdbc.sql("select max(number) from ledger_block").query(Long.class).single();
      String flip =
          "update ledger_block set signature = set_byte(signature, 5, get_byte(signature, 5) # 1) where number = "
              + number;
      assertThat(failureAfter(flip, flip).problem()).contains("the signature of block " + number);
    }

    @Test
    void namesAWitnessedBlockThatIsGoneWithAllItsEntries() throws Exception {
      sealed(Map.of("a", 1));
      long number = jdbc.sql("select max(number) from ledger_block").query(Long.class).single();
      try (Connection connection = database.superuser().getConnection();
          Statement statement = connection.createStatement()) {
        statement.execute("set session_replication_role = replica");
        statement.execute(
            "create temp table leaves as select * from ledger_leaf where block = " + number);
        statement.execute(
            "create temp table blocks as select * from ledger_block where number = " + number);
        statement.execute(
            "create temp table entries as select * from ledger_entry where id in (select entry from leaves)");
        statement.execute("delete from ledger_leaf where block = " + number);
        statement.execute("delete from ledger_block where number = " + number);
        statement.execute("delete from ledger_entry where id in (select id from entries)");
        try {
          assertThat(check.check().firstFailure().block()).isEqualTo(number);
          assertThat(check.check().firstFailure().problem())
              .contains("was witnessed and is not in the database");
        } finally {
          statement.execute("insert into ledger_entry select * from entries");
          statement.execute("insert into ledger_block select * from blocks");
          statement.execute("insert into ledger_leaf select * from leaves");
        }
      }
      assertThat(check.check().intact()).isTrue();
    }

    @Test
    void namesAnEntryThatNoBlockWillEverHold() throws Exception {
      UUID entry = UUID.randomUUID();
      LedgerCheck.Failure failure =
          failureAfter(
              "insert into ledger_entry (id, kind, subject, content, digest, at) values ('"
                  + entry
                  + "', 'slipped-in', '"
                  + entry
                  + "', 'x', sha256('x'), now())",
              "delete from ledger_entry where id = '" + entry + "'");
      assertThat(failure.entry()).isEqualTo(entry);
    }
  }
}
