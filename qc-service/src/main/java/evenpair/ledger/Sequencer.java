package evenpair.ledger;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.core.task.TaskExecutor;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Gathers waiting entries into signed blocks, every second or when {@value #MANY} wait. Any process
 * may do it, one at a time (an advisory lock that ends with the transaction). It takes what waits,
 * never "everything behind the last number": numbers do not commit in order.
 */
@Component
class Sequencer {
  private static final Logger LOG = LoggerFactory.getLogger(Sequencer.class);
  private static final long LOCK = 0x6c6564676572L;
  private static final int MANY = 256;
  private static final int MOST_A_BLOCK = 4096;

  private final JdbcTemplate jdbc;
  private final BlockTable blocks;
  private final SigningKeys keys;
  private final HeadsFile heads;
  private final Clock clock;
  private final TransactionTemplate transaction;
  private final TaskExecutor executor;
  private final AtomicInteger committed = new AtomicInteger();

  Sequencer(
      JdbcTemplate jdbc,
      BlockTable blocks,
      SigningKeys keys,
      HeadsFile heads,
      Clock clock,
      PlatformTransactionManager transactions,
      @Qualifier("applicationTaskExecutor") TaskExecutor executor) {
    this.jdbc = jdbc;
    this.blocks = blocks;
    this.keys = keys;
    this.heads = heads;
    this.clock = clock;
    this.transaction = new TransactionTemplate(transactions);
    this.transaction.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
    this.executor = executor;
  }

  /** Called for each entry once its record is durable. */
  void entryCommitted() {
    if (committed.incrementAndGet() >= MANY) {
      committed.set(0);
      executor.execute(this::run);
    }
  }

  @Scheduled(fixedDelay = 1000)
  void run() {
    try {
      while (sealOneBlock() == MOST_A_BLOCK) {
        LOG.info("A full block of {} entries was sealed; more wait", MOST_A_BLOCK);
      }
      heads.witness(blocks);
    } catch (RuntimeException e) {
      LOG.error("The ledger could not be sealed; tried again in a second", e);
    }
  }

  /**
   * @return how many entries the new block holds; 0 if nothing waits or another process is at it
   */
  int sealOneBlock() {
    Integer sealed =
        transaction.execute(
            status -> {
              Boolean alone =
                  jdbc.queryForObject("select pg_try_advisory_xact_lock(?)", Boolean.class, LOCK);
              return Boolean.TRUE.equals(alone) ? seal(waiting()) : 0;
            });
    return sealed == null ? 0 : sealed;
  }

  private record Leaf(UUID entry, byte[] digest) {}

  private List<Leaf> waiting() {
    return jdbc.query(
        "select e.id, e.content from ledger_waiting w join ledger_entry e on e.id = w.entry order by e.id limit ?",
        (row, index) ->
            new Leaf(row.getObject("id", UUID.class), Merkle.leaf(row.getBytes("content"))),
        MOST_A_BLOCK);
  }

  private int seal(List<Leaf> leaves) {
    if (leaves.isEmpty()) {
      return 0;
    }
    BlockHead head = headOver(leaves);
    blocks.add(new Block(head, keys.sign(head.bytes()), head.digest()));
    jdbc.batchUpdate(
        "insert into ledger_leaf (entry, block, place, digest) values (?, ?, ?, ?)",
        IntStream.range(0, leaves.size())
            .mapToObj(
                place ->
                    new Object[] {
                      leaves.get(place).entry(), head.number(), place, leaves.get(place).digest()
                    })
            .toList());
    jdbc.batchUpdate(
        "delete from ledger_waiting where entry = ?",
        leaves.stream().map(leaf -> new Object[] {leaf.entry()}).toList());
    return leaves.size();
  }

  private BlockHead headOver(List<Leaf> leaves) {
    Block last = blocks.last().orElse(null);
    return new BlockHead(
        last == null ? 1 : last.head().number() + 1,
        last == null ? new byte[BlockHead.DIGEST_BYTES] : last.digest(),
        Merkle.root(leaves.stream().map(Leaf::digest).toList()),
        leaves.size(),
        clock.instant().truncatedTo(ChronoUnit.MICROS),
        keys.ownId());
  }
}
