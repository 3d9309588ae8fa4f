package evenpair.inspections.plant;

import evenpair.inspections.dropfolder.DropFolderStates;
import evenpair.ledger.LedgerState;
import evenpair.web.DataDisk;
import evenpair.web.Software;
import evenpair.web.UnfinishedEvents;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Asks the service's own parts how they are; a database that is away is one of the answers. */
@Component
class ServiceHealthReader {
  private static final Logger LOG = LoggerFactory.getLogger(ServiceHealthReader.class);

  private final JdbcClient jdbc;
  private final DataDisk disk;
  private final LedgerState ledger;
  private final UnfinishedEvents events;
  private final DropFolderStates drops;
  private final Software software;

  ServiceHealthReader(
      JdbcClient jdbc,
      DataDisk disk,
      LedgerState ledger,
      UnfinishedEvents events,
      DropFolderStates drops,
      Software software) {
    this.jdbc = jdbc;
    this.disk = disk;
    this.ledger = ledger;
    this.events = events;
    this.drops = drops;
    this.software = software;
  }

  /**
   * @param database empty if it does not answer
   * @param disk empty if it cannot be asked
   */
  record ServiceHealth(
      String version,
      Optional<Database> database,
      Optional<DataDisk.Space> disk,
      List<DropFolderStates.State> dropFolders) {}

  /**
   * @param latency of one question and its answer
   * @param unsealed entries of the ledger that no block holds yet
   * @param unfinished events whose listeners have not finished
   * @param oneRole one database role owns the tables and works on them
   */
  record Database(
      Duration latency,
      long unsealed,
      Optional<Instant> oldestUnsealedAt,
      Optional<Instant> lastBlockAt,
      long unfinished,
      Optional<Instant> oldestUnfinishedAt,
      boolean oneRole) {}

  ServiceHealth read() {
    return new ServiceHealth(software.version(), database(), space(), drops.states());
  }

  private Optional<Database> database() {
    try {
      long before = System.nanoTime();
      jdbc.sql("select 1").query(Integer.class).single();
      Duration latency = Duration.ofNanos(System.nanoTime() - before);
      return Optional.of(
          new Database(
              latency,
              ledger.unsealed(),
              ledger.oldestUnsealedAt(),
              ledger.lastBlockAt(),
              events.count(),
              events.oldestAt(),
              ledger.oneRole()));
    } catch (DataAccessException e) {
      LOG.debug("The database does not answer", e);
      return Optional.empty();
    }
  }

  private Optional<DataDisk.Space> space() {
    try {
      return Optional.of(disk.space());
    } catch (java.io.UncheckedIOException e) {
      LOG.debug("The disk cannot be asked", e);
      return Optional.empty();
    }
  }
}
