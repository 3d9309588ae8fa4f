package evenpair.ledger;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Walks blocks, leaves, entries, the rows and files behind them, and the heads outside the
 * database, in order, and names the first that does not hold.
 */
@Component
class LedgerCheck {
  private static final JsonMapper JSON = JsonMapper.builder().build();
  private static final int BLOCKS_A_TIME = 100;

  private final JdbcClient jdbc;
  private final BlockTable blocks;
  private final SigningKeys keys;
  private final HeadsFile heads;
  private final RowDigests rows;
  private final SealedFiles files;
  private final TransactionTemplate snapshot;

  LedgerCheck(
      JdbcClient jdbc,
      BlockTable blocks,
      SigningKeys keys,
      HeadsFile heads,
      RowDigests rows,
      SealedFiles files,
      PlatformTransactionManager transactions) {
    this.jdbc = jdbc;
    this.blocks = blocks;
    this.keys = keys;
    this.heads = heads;
    this.rows = rows;
    this.files = files;
    this.snapshot = new TransactionTemplate(transactions);
    this.snapshot.setReadOnly(true);
    this.snapshot.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
  }

  /**
   * @param block the block's number, null if the fault lies in no block
   * @param entry the entry's id, null if the fault lies in the block itself
   * @param problem a sentence
   */
  record Failure(Long block, UUID entry, String problem) {}

  /**
   * @param waiting entries that no block holds yet
   * @param witnessedHeads lines of the file of heads outside the database
   * @param rows of tables that were read again and agree with their entries
   * @param files of the capture store that were read again
   * @param entriesWithoutEvidence sealed before rows and files were sealed with their entries
   * @param head of the newest block walked, to be written down: number, colon, digest in hex; null
   *     while there is none
   * @param keyId of the key that seals now
   */
  record Report(
      boolean intact,
      long blocks,
      long entries,
      long waiting,
      int witnessedHeads,
      long rows,
      int files,
      long entriesWithoutEvidence,
      String head,
      String keyId,
      Failure firstFailure,
      String note) {}

  /**
   * The heads are read before the snapshot begins: each of them stood in the database before it
   * stood in the file.
   *
   * @param printed a head that somebody wrote down, empty if there is none at hand
   */
  Report check(Optional<PrintedHead> printed) {
    HeadsFile.Witnessed witnessed = witnessed();
    return snapshot.execute(status -> new Walk(witnessed, printed).report());
  }

  Report check() {
    return check(Optional.empty());
  }

  private HeadsFile.Witnessed witnessed() {
    try {
      return heads.witnessed();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private record Sealed(
      UUID entry,
      int place,
      byte[] leaf,
      byte[] content,
      byte[] digest,
      String kind,
      UUID subject,
      OffsetDateTime at) {}

  /** One check; ends at the first failure. */
  private final class Walk {
    private final HeadsFile.Witnessed witnessed;
    private final Optional<PrintedHead> printed;
    private final EvidenceCheck evidence = new EvidenceCheck(jdbc, rows, files);
    private long number;
    private long entries;
    private byte[] previous = new byte[BlockHead.DIGEST_BYTES];

    private Walk(HeadsFile.Witnessed witnessed, Optional<PrintedHead> printed) {
      this.witnessed = witnessed;
      this.printed = printed;
    }

    private Report report() {
      HeadsCheck outside = new HeadsCheck(blocks);
      Optional<Failure> failure =
          blocks()
              .or(() -> outside.file(witnessed))
              .or(() -> printed.flatMap(outside::printed))
              .or(this::strayLeaf)
              .or(this::lostEntry)
              .or(this::strayRows);
      long waiting = jdbc.sql("select count(*) from ledger_waiting").query(Long.class).single();
      return new Report(
          failure.isEmpty(),
          number,
          entries,
          waiting,
          witnessed.heads().size(),
          evidence.rows(),
          evidence.files(),
          evidence.withoutEvidence(),
          number == 0 ? null : number + ":" + HexFormat.of().formatHex(previous),
          keys.ownId(),
          failure.orElse(null),
          "What was removed after the last witnessed head cannot be found.");
    }

    private Optional<Failure> blocks() {
      List<Block> more = blocks.after(number, BLOCKS_A_TIME);
      while (!more.isEmpty()) {
        for (Block block : more) {
          Optional<Failure> failure = block(block);
          if (failure.isPresent()) {
            return failure;
          }
          number = block.head().number();
          previous = block.digest();
          entries += block.head().entries();
        }
        more = blocks.after(number, BLOCKS_A_TIME);
      }
      return Optional.empty();
    }

    private Optional<Failure> block(Block block) {
      BlockHead head = block.head();
      long expected = number + 1;
      if (head.number() != expected) {
        return failed(expected, null, "block %d is missing".formatted(expected));
      }
      if (!Arrays.equals(head.previous(), previous)) {
        return failed(
            expected, null, "block %d does not name the block before it".formatted(expected));
      }
      if (!Arrays.equals(head.digest(), block.digest())) {
        return failed(
            expected, null, "block %d was changed: its digest is another".formatted(expected));
      }
      if (!keys.knows(head.keyId())) {
        return failed(
            expected,
            null,
            "block %d is signed by key %s, whose ledger-%s.pub is not among this service's keys"
                .formatted(expected, head.keyId(), head.keyId()));
      }
      if (!keys.verify(head.keyId(), head.bytes(), block.signature())) {
        return failed(
            expected, null, "the signature of block %d does not hold".formatted(expected));
      }
      return leaves(head);
    }

    private Optional<Failure> leaves(BlockHead head) {
      List<byte[]> leaves = new ArrayList<>();
      for (Sealed sealed : sealedIn(head.number())) {
        if (sealed.place() != leaves.size()) {
          return failed(
              head.number(),
              null,
              "block %d has no leaf at place %d".formatted(head.number(), leaves.size()));
        }
        Optional<String> problem =
            problem(sealed).or(() -> evidence.problem(JSON.readTree(sealed.content())));
        if (problem.isPresent()) {
          return failed(
              head.number(),
              sealed.entry(),
              "entry %s in block %d %s".formatted(sealed.entry(), head.number(), problem.get()));
        }
        leaves.add(sealed.leaf());
      }
      if (leaves.size() != head.entries()) {
        return failed(
            head.number(),
            null,
            "block %d has %d leaves, not %d"
                .formatted(head.number(), leaves.size(), head.entries()));
      }
      if (!Arrays.equals(Merkle.root(leaves), head.root())) {
        return failed(
            head.number(),
            null,
            "the leaves of block %d do not give its root".formatted(head.number()));
      }
      return Optional.empty();
    }

    private Optional<Failure> strayLeaf() {
      return jdbc.sql("select entry, block from ledger_leaf where block > ? or block < 1 limit 1")
          .param(number)
          .query(
              (row, index) ->
                  new Failure(
                      row.getLong("block"),
                      row.getObject("entry", UUID.class),
                      "a leaf names a block that does not exist"))
          .optional();
    }

    private Optional<Failure> lostEntry() {
      return jdbc.sql(
              """
              select id from ledger_entry e
              where not exists (select 1 from ledger_leaf l where l.entry = e.id)
                and not exists (select 1 from ledger_waiting w where w.entry = e.id)
              order by id limit 1
              """)
          .query(UUID.class)
          .optional()
          .map(id -> new Failure(null, id, "entry " + id + " is in no block and waits for none"));
    }

    private Optional<Failure> strayRows() {
      List<JsonNode> waiting =
          jdbc
              .sql(
                  "select e.content from ledger_waiting w join ledger_entry e on e.id = w.entry"
                      + " where not exists (select 1 from ledger_leaf l where l.entry = e.id)")
              .query(byte[].class)
              .list()
              .stream()
              .map(JSON::readTree)
              .toList();
      return evidence.strayRows(waiting).map(problem -> new Failure(null, null, problem));
    }
  }

  private static Optional<Failure> failed(long block, UUID entry, String problem) {
    return Optional.of(new Failure(block, entry, problem));
  }

  private static Optional<String> problem(Sealed sealed) {
    if (sealed.content() == null) {
      return Optional.of("is missing");
    }
    if (!Arrays.equals(Merkle.leaf(sealed.content()), sealed.leaf())) {
      return Optional.of("was changed: its content does not give its leaf");
    }
    if (!Arrays.equals(Digests.sha256(sealed.content()), sealed.digest())) {
      return Optional.of("was changed: its digest is another");
    }
    return columnsHold(sealed)
        ? Optional.empty()
        : Optional.of("was changed: its columns say other than its content");
  }

  private static boolean columnsHold(Sealed sealed) {
    try {
      JsonNode content = JSON.readTree(sealed.content());
      return content.path("id").asString("").equals(sealed.entry().toString())
          && content.path("kind").asString("").equals(sealed.kind())
          && content.path("subject").asString("").equals(sealed.subject().toString())
          && content.path("at").asString("").equals(sealed.at().toInstant().toString());
    } catch (JacksonException e) {
      return false;
    }
  }

  private List<Sealed> sealedIn(long block) {
    return jdbc.sql(
            """
            select l.entry, l.place, l.digest as leaf, e.content, e.digest, e.kind, e.subject, e.at
            from ledger_leaf l left join ledger_entry e on e.id = l.entry
            where l.block = ? order by l.place
            """)
        .param(block)
        .query(LedgerCheck::sealed)
        .list();
  }

  private static Sealed sealed(ResultSet row, int index) throws SQLException {
    return new Sealed(
        row.getObject("entry", UUID.class),
        row.getInt("place"),
        row.getBytes("leaf"),
        row.getBytes("content"),
        row.getBytes("digest"),
        row.getString("kind"),
        row.getObject("subject", UUID.class),
        row.getObject("at", OffsetDateTime.class));
  }
}
