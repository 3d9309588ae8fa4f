package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.EvenpairDatabaseTest;
import evenpair.TestDatabase;
import evenpair.ledger.SealedTables;
import evenpair.web.DataFolder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.JsonNode;

/**
 * Someone above all rules changes the record a byte at a time, in places drawn at random; the check
 * finds each. On a database of its own: it tampers, and puts everything back.
 */
@EvenpairDatabaseTest(properties = "test.own=seal")
@Import(FixtureSeams.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SealMutationTests {
  private static final long SEED = 20261125;
  private static final int IN_ROWS = 150;
  private static final int IN_FILES = 30;
  private static final int IN_HEADS = 20;

  @LocalServerPort private int port;
  @Autowired private TestDatabase.Access database;
  @Autowired private JdbcClient jdbc;
  @Autowired private DataFolder data;
  private final Random random = new Random(SEED);
  private TestLine line;
  private Connection superuser;
  private StoredBytes bytes;

  @BeforeAll
  void aShortShift() throws SQLException {
    line = new TestLine(port);
    line.makeStation("bench-seal");
    for (int i = 0; i < 4; i++) {
      byte[] left = TestSound.wav(TestSound.capture(50 + i, TestSound.peak(3000, 6)));
      byte[] right =
          TestSound.wav(
              TestSound.capture(
                  70 + i, TestSound.peak(3000, 6), TestSound.peak(9000, i == 2 ? 6 : 0)));
      String json = TestLine.inspection("FE-M" + i, "plain", "bench-seal");
      assertThat(line.inspect(json, left, right).status()).isEqualTo(201);
    }
    superuser = database.superuser().getConnection();
    try (Statement statement = superuser.createStatement()) {
      statement.execute("set session_replication_role = replica");
      statement.execute("set timezone = 'UTC'");
    }
    bytes = new StoredBytes(superuser, random);
    waitUntilSealed();
  }

  @AfterAll
  void close() throws SQLException {
    superuser.close();
  }

  private void waitUntilSealed() {
    long end = System.nanoTime() + 60_000_000_000L;
    while (check("").path("waiting").asInt() > 0 || check("").path("witnessedHeads").asInt() < 1) {
      assertThat(System.nanoTime()).as("sealing takes seconds").isLessThan(end);
    }
    assertThat(check("").path("intact").asBoolean()).as("%s", check("")).isTrue();
  }

  private JsonNode check(String head) {
    return line.get("/api/ledger/check" + (head.isEmpty() ? "" : "?head=" + head)).json();
  }

  /** The change was noticed, and the sentence says where it lies. */
  private String found(String change) {
    JsonNode report = check("");
    assertThat(report.path("intact").asBoolean(true)).as("unnoticed: %s", change).isFalse();
    String problem = report.path("firstFailure").path("problem").asString();
    assertThat(problem).as(change).isNotBlank();
    return problem;
  }

  private void intactAgain() {
    assertThat(check("").path("intact").asBoolean()).as("%s", check("")).isTrue();
  }

  @Test
  void findsAChangedByteInAnyColumnOfAnySealedTable() throws SQLException {
    List<String> tables = new ArrayList<>(sealedTables());
    tables.add("inspection");
    List<String> changed = new ArrayList<>();
    while (changed.size() < IN_ROWS) {
      String table = tables.get(random.nextInt(tables.size()));
      StoredBytes.Change change = bytes.changeOne(table).orElse(null);
      if (change == null) {
        continue; // an empty table, a null, or a value that a constraint of the table refuses
      }
      found(change.where());
      bytes.undo(change);
      changed.add(table);
    }
    intactAgain();
    assertThat(changed)
        .contains("attempt", "attempt_channel", "inspection", "inspection_verdict")
        .contains("ledger_entry", "ledger_leaf", "ledger_block")
        .contains("microphone_calibration", "station_correction", "limit_set", "golden_response");
  }

  @Test
  void findsAChangedByteInACaptureFile() throws Exception {
    List<Path> files;
    try (Stream<Path> walk = Files.walk(data.folder("captures"))) {
      files = walk.filter(Files::isRegularFile).sorted().toList();
    }
    assertThat(files).hasSizeGreaterThan(10);
    for (int i = 0; i < IN_FILES; i++) {
      Path file = files.get(random.nextInt(files.size()));
      changeAndPutBack(
          file, () -> assertThat(found(file.toString())).contains(file.getFileName().toString()));
    }
    intactAgain();
  }

  @Test
  void findsAChangedByteInTheFileOfHeads() throws Exception {
    Path heads = data.folder("heads").resolve("heads.jsonl");
    for (int i = 0; i < IN_HEADS; i++) {
      changeAndPutBack(heads, () -> found("the file of heads"));
    }
    intactAgain();
  }

  private interface Looking {
    void look() throws Exception;
  }

  private void changeAndPutBack(Path file, Looking looking) throws Exception {
    byte[] before = Files.readAllBytes(file);
    byte[] after = before.clone();
    int place = random.nextInt(after.length);
    after[place] ^= (byte) (1 << random.nextInt(8));
    boolean locked = !Files.isWritable(file);
    if (locked) {
      assertThat(file.toFile().setWritable(true)).isTrue();
    }
    Files.write(file, after);
    try {
      looking.look();
    } finally {
      Files.write(file, before);
      if (locked) {
        assertThat(file.toFile().setReadOnly()).isTrue();
      }
    }
  }

  @Test
  void findsTwoEntriesThatChangedPlaces() throws SQLException {
    long block = number("select block from ledger_leaf group by block having count(*) > 1 limit 1");
    String swap =
        "update ledger_leaf set place = 1 - place + 100000 where block = %d and place in (0, 1);"
            + "update ledger_leaf set place = place - 100000 where block = %<d and place >= 99999";
    run(swap.formatted(block));
    assertThat(found("order of leaves")).contains("block " + block);
    run(swap.formatted(block));
    intactAgain();
  }

  @Test
  void findsARowThatNoEntrySpeaksOf() throws SQLException {
    run(
        "create temp table forged as select * from attempt_channel limit 1;"
            + "update forged set attempt_id = gen_random_uuid();"
            + "insert into attempt_channel select * from forged");
    assertThat(found("a forged row")).contains("attempt_channel");
    run("delete from attempt_channel where attempt_id in (select attempt_id from forged)");
    run("drop table forged");
    intactAgain();
  }

  @Test
  void findsARowThatWasTakenAway() throws SQLException {
    run("create temp table gone as select * from attempt_channel limit 1");
    run(
        "delete from attempt_channel a using gone g where a.attempt_id = g.attempt_id and a.channel = g.channel");
    assertThat(found("a row taken away")).contains("attempt_channel");
    run("insert into attempt_channel select * from gone; drop table gone");
    intactAgain();
  }

  /** Whoever rules database and machine can take the newest block out of both; paper he cannot. */
  @Test
  void findsARemovedLastEntryByAHeadThatWasPrinted() throws Exception {
    String head = check("").path("head").asString();
    Path file = data.folder("heads").resolve("heads.jsonl");
    byte[] before = Files.readAllBytes(file);
    List<String> lines = Files.readAllLines(file);
    long last = number("select max(number) from ledger_block");
    for (String table : List.of("ledger_block", "ledger_leaf", "ledger_entry")) {
      run("create temp table gone_%s as select * from %<s".formatted(table));
    }
    run(
        "delete from ledger_entry where id in (select entry from ledger_leaf where block = %d);"
                .formatted(last)
            + "delete from ledger_leaf where block = %d; delete from ledger_block where number = %<d"
                .formatted(last));
    Files.write(file, lines.subList(0, lines.size() - 1));
    try {
      JsonNode report = check(head);
      assertThat(report.path("intact").asBoolean(true)).isFalse();
      assertThat(report.path("firstFailure").path("problem").asString())
          .contains("block " + last)
          .contains("printed");
    } finally {
      Files.write(file, before);
      for (String table : List.of("ledger_entry", "ledger_block", "ledger_leaf")) {
        run(
            "insert into %s select * from gone_%<s on conflict do nothing; drop table gone_%<s"
                .formatted(table));
      }
    }
    assertThat(check(head).path("intact").asBoolean()).as("%s", check(head)).isTrue();
  }

  @Test
  void saysWhatAHeadLooksLikeWhenItIsGivenAnother() {
    assertThat(line.get("/api/ledger/check?head=12").status()).isEqualTo(400);
  }

  /** A table whose rows the database refuses to change is one that the check must read again. */
  @Test
  void readsEveryInsertOnlyTableAgain() {
    List<String> named =
        jdbc.sql("select distinct convert_from(content, 'UTF8') from ledger_entry")
            .query(String.class)
            .list();
    List<String> versions =
        List.of(
            "golden_response",
            "golden_response_sign_off",
            "golden_response_activation",
            "limit_set",
            "limit_set_sign_off",
            "limit_set_activation");
    List<String> ledger = List.of("ledger_entry", "ledger_leaf", "ledger_block");
    for (String table : sealedTables()) {
      assertThat(
              SealedTables.WHOLLY.contains(table)
                  || ledger.contains(table)
                  || versions.contains(table)
                      && named.stream().anyMatch(entry -> entry.contains("\"" + table + "\"")))
          .as(table)
          .isTrue();
    }
  }

  private List<String> sealedTables() {
    return jdbc.sql(
            "select relname from pg_trigger join pg_class c on c.oid = tgrelid"
                + " where tgname = relname || '_is_insert_only' order by relname")
        .query(String.class)
        .list();
  }

  private void run(String statements) throws SQLException {
    try (Statement statement = superuser.createStatement()) {
      statement.execute(statements);
    }
  }

  private long number(String sql) {
    return jdbc.sql(sql).query(Long.class).single();
  }
}
