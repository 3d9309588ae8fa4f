package evenpair.inspections.plant;

import evenpair.inspections.dropfolder.DropFolderStates;
import evenpair.inspections.plant.ServiceHealthReader.Database;
import evenpair.inspections.plant.ServiceHealthReader.ServiceHealth;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.MultiGauge;
import io.micrometer.core.instrument.MultiGauge.Row;
import io.micrometer.core.instrument.Tags;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionException;

/**
 * The health page's numbers as gauges, read anew every 15 s so that a scrape never waits for the
 * database. Labels are stations, products, tunings and words of ours: never a serial number, never
 * a person.
 */
@Component
class PlantMetrics {
  private static final Logger LOG = LoggerFactory.getLogger(PlantMetrics.class);
  private static final Tags NONE = Tags.empty();

  private final StationHealthReader stations;
  private final ServiceHealthReader service;
  private final Clock clock;
  private final Map<String, MultiGauge> gauges = new HashMap<>();
  private volatile Rows newest = new Rows();

  PlantMetrics(
      StationHealthReader stations,
      ServiceHealthReader service,
      MeterRegistry registry,
      Clock clock) {
    this.stations = stations;
    this.service = service;
    this.clock = clock;
    add(registry, "held", "Captures of seatings that a bench holds, as it last said");
    add(registry, "held.oldest.age", "seconds", "Age of the oldest of them");
    add(registry, "station.blocked", "1: the station may not judge");
    add(registry, "station.heard.age", "seconds", "Since anything last came from the station");
    add(
        registry,
        "calibration.left",
        "seconds",
        "Until a calibration or correction expires; below 0: expired");
    add(
        registry,
        "verification.left",
        "seconds",
        "Until a passed shift verification expires; below 0: expired");
    add(registry, "verification.passed", "1: the newest shift verification passed");
    add(registry, "first.pass.units", "Units judged for the first time within the last hour");
    add(registry, "first.pass.passed", "Those of them that passed");
    add(registry, "database.up", "1: the database answers");
    add(registry, "database.latency", "seconds", "One question and its answer");
    add(registry, "ledger.unsealed", "Entries of the ledger that no block holds yet");
    add(registry, "ledger.block.age", "seconds", "Since the newest block was made");
    add(
        registry,
        "ledger.one.role",
        "1: one database role owns the sealed tables and works on them");
    add(registry, "events.unfinished", "Events whose listeners have not finished");
    add(registry, "disk.free", "bytes", "Free on the data folder's disk");
    add(registry, "disk.size", "bytes", "Size of the data folder's disk");
    add(registry, "disk.warn.below", "bytes", "Free space below which the service warns");
    add(registry, "drop.watching", "1: this process watches the station's drop folder");
    add(registry, "drop.waiting", "Sets that wait in a drop folder");
    add(registry, "drop.sets", "Sets taken and refused since this process started");
  }

  private void add(MeterRegistry registry, String name, String description) {
    add(registry, name, null, description);
  }

  private void add(MeterRegistry registry, String name, String unit, String description) {
    MultiGauge.Builder builder = MultiGauge.builder("evenpair." + name).description(description);
    gauges.put(name, (unit == null ? builder : builder.baseUnit(unit)).register(registry));
  }

  @Scheduled(fixedDelayString = "${evenpair.metrics.interval:15s}")
  void refresh() {
    Rows rows = new Rows();
    ServiceHealth own = service.read();
    own(own, rows);
    try {
      if (own.database().isPresent()) {
        Instant now = clock.instant();
        stations.all(Locale.ENGLISH).forEach(one -> station(one, now, rows));
      }
    } catch (DataAccessException | TransactionException e) {
      LOG.debug("The stations' numbers could not be read", e);
    }
    newest = rows;
    gauges.forEach((name, gauge) -> gauge.register(gaugesOf(name, rows)));
  }

  private List<Row<?>> gaugesOf(String name, Rows rows) {
    List<Row<?>> all = new ArrayList<>();
    rows.of(name).keySet().forEach(tags -> all.add(Row.of(tags, () -> value(name, tags))));
    return all;
  }

  /** What was read last. A gauge that stays reads its newest value from here. */
  private static final class Rows {
    private final Map<String, Map<Tags, Double>> byName = new HashMap<>();

    void add(String name, Tags tags, double value) {
      byName.computeIfAbsent(name, any -> new HashMap<>()).put(tags, value);
    }

    Map<Tags, Double> of(String name) {
      return byName.getOrDefault(name, Map.of());
    }
  }

  private double value(String name, Tags tags) {
    return newest.of(name).getOrDefault(tags, Double.NaN);
  }

  private void own(ServiceHealth own, Rows rows) {
    Instant now = clock.instant();
    rows.add("database.up", NONE, own.database().isPresent() ? 1 : 0);
    own.database().ifPresent(database -> database(database, now, rows));
    own.disk()
        .ifPresent(
            space -> {
              rows.add("disk.free", NONE, space.freeBytes());
              rows.add("disk.size", NONE, space.totalBytes());
              rows.add("disk.warn.below", NONE, space.warnBelowBytes());
            });
    for (DropFolderStates.State state : own.dropFolders()) {
      Tags station = Tags.of("station", state.station());
      rows.add("drop.watching", station, state.watching() ? 1 : 0);
      rows.add("drop.waiting", station, state.waiting());
      rows.add("drop.sets", station.and("result", "taken"), state.taken());
      rows.add("drop.sets", station.and("result", "refused"), state.refused());
    }
  }

  private static void database(Database database, Instant now, Rows rows) {
    rows.add("database.latency", NONE, seconds(database.latency()));
    rows.add("ledger.unsealed", NONE, database.unsealed());
    database.lastBlockAt().ifPresent(at -> rows.add("ledger.block.age", NONE, age(at, now)));
    rows.add("ledger.one.role", NONE, database.oneRole() ? 1 : 0);
    rows.add("events.unfinished", NONE, database.unfinished());
  }

  private static void station(StationHealth one, Instant now, Rows rows) {
    Tags station = Tags.of("station", one.station());
    rows.add("held", station, one.held().map(HeldReports.Report::held).orElse(0));
    rows.add(
        "held.oldest.age",
        station,
        one.held()
            .flatMap(report -> Optional.ofNullable(report.oldestAt()))
            .map(at -> age(at, now))
            .orElse(0.0));
    rows.add("station.blocked", station, one.block().isPresent() ? 1 : 0);
    one.heardAt().ifPresent(at -> rows.add("station.heard.age", station, age(at, now)));
    one.calibrations()
        .forEach(
            validity ->
                validity
                    .until()
                    .ifPresent(
                        until ->
                            rows.add(
                                "calibration.left",
                                station.and("kind", validity.kind()),
                                -age(until, now))));
    one.verifications()
        .forEach(
            verified -> {
              Tags tuning = station.and("product", verified.product(), "tuning", verified.tuning());
              rows.add("verification.passed", tuning, verified.passed() ? 1 : 0);
              if (verified.passed()) {
                rows.add("verification.left", tuning, -age(verified.validUntil(), now));
              }
            });
    rows.add("first.pass.units", station, one.firstPass().units());
    rows.add("first.pass.passed", station, one.firstPass().passed());
  }

  private static double age(Instant at, Instant now) {
    return seconds(Duration.between(at, now));
  }

  private static double seconds(Duration span) {
    return span.toNanos() / 1e9;
  }
}
