package evenpair.inspections.plant;

import evenpair.inspections.dropfolder.DropFolderStates;
import evenpair.inspections.plant.ServiceHealthReader.ServiceHealth;
import evenpair.inspections.plant.StationHealth.Mountings;
import evenpair.stations.Stations.Verified;
import evenpair.statistics.Proportion;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.DataDisk;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/** The plant on one page. */
@RestController
@Tag(name = "Health")
class HealthController {
  private static final double CONFIDENCE = 0.95;
  private static final String METHOD =
      "First pass: units judged in production within the span, passed in every tuning judged within it; a reseat is no failure."
          + " Interval: Wilson, 95 %. Reseats: attempts that looked like a bad mounting, of all attempts.";

  private final StationHealthReader stations;
  private final ServiceHealthReader service;
  private final Names names;
  private final OtherProcesses others;
  private final Clock clock;

  HealthController(
      StationHealthReader stations,
      ServiceHealthReader service,
      Names names,
      OtherProcesses others,
      Clock clock) {
    this.stations = stations;
    this.service = service;
    this.names = names;
    this.others = others;
    this.clock = clock;
  }

  @GetMapping("/api/health/stations")
  @AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
  @Operation(
      summary = "Every station and the service at a glance",
      description =
          "Last verdicts, first-pass yield of the last hour, reseats of the last eight, what is left of calibrations, what benches"
              + " hold, and the state of database, disk and ledger. Names of people only for engineers and administrators.")
  HealthJson stations(Locale locale) {
    Instant now = clock.instant();
    boolean readable = names.readable();
    ServiceHealth own = service.read();
    List<HealthJson.Station> all =
        own.database().isEmpty()
            ? List.of()
            : stations.all(locale).stream().map(one -> station(one, readable, now)).toList();
    return new HealthJson(now, all, service(own), METHOD);
  }

  private HealthJson.Station station(StationHealth one, boolean readable, Instant now) {
    return new HealthJson.Station(
        one.station(),
        state(one, now),
        one.block()
            .map(block -> new HealthJson.Block(block.cause(), block.since(), block.text()))
            .orElse(null),
        one.verdicts().stream()
            .map(
                last ->
                    new HealthJson.Verdict(
                        last.inspection(), last.serial(), last.tuning(), last.verdict(), last.at()))
            .toList(),
        firstPass(one.firstPass()),
        mountings(one.mountings(), readable),
        one.calibrations().stream().map(validity -> validity(validity, now)).toList(),
        one.verifications().stream().map(verified -> verification(verified, now)).toList(),
        one.held()
            .map(
                report ->
                    new HealthJson.Held(report.held(), report.oldestAt(), report.reportedAt()))
            .orElse(null),
        one.heardAt().orElse(null));
  }

  static String state(StationHealth one, Instant now) {
    if (one.block().isPresent()) {
      return "blocked";
    }
    boolean lacking =
        one.calibrations().stream()
            .anyMatch(validity -> validity.until().filter(now::isBefore).isEmpty());
    boolean unverified =
        one.verifications().stream()
            .anyMatch(verified -> verification(verified, now).state().equals("missing"));
    return lacking || unverified ? "problem" : "ready";
  }

  private static HealthJson.FirstPass firstPass(StationHealth.FirstPass counted) {
    int minutes = (int) StationHealthReader.FIRST_PASS_SPAN.toMinutes();
    if (counted.units() == 0) {
      return new HealthJson.FirstPass(0, 0, null, null, minutes);
    }
    Proportion share = new Proportion(counted.passed(), counted.units());
    Proportion.Interval interval = share.wilson(CONFIDENCE);
    return new HealthJson.FirstPass(
        counted.passed(),
        counted.units(),
        share.share(),
        new double[] {interval.lower(), interval.upper()},
        minutes);
  }

  private HealthJson.Mountings mountings(List<Mountings> all, boolean readable) {
    return new HealthJson.Mountings(
        all.stream().mapToInt(Mountings::attempts).sum(),
        all.stream().mapToInt(Mountings::reseats).sum(),
        (int) StationHealthReader.MOUNTINGS_SPAN.toMinutes(),
        readable
            ? all.stream()
                .map(
                    one ->
                        new HealthJson.Operator(
                            names.of(one.operator()), one.attempts(), one.reseats()))
                .toList()
            : null);
  }

  private static HealthJson.Validity validity(StationHealth.Validity validity, Instant now) {
    return new HealthJson.Validity(
        validity.kind(),
        validity.until().orElse(null),
        validity.until().map(until -> Duration.between(now, until).toSeconds()).orElse(null));
  }

  private static HealthJson.Verification verification(Verified verified, Instant now) {
    String state;
    if (verified.validUntil() == null) {
      state = "missing";
    } else if (!verified.passed()) {
      state = "failed";
    } else {
      state = now.isBefore(verified.validUntil()) ? "passed" : "expired";
    }
    return new HealthJson.Verification(
        verified.product(), verified.tuning(), state, verified.validUntil());
  }

  private HealthJson.Service service(ServiceHealth own) {
    return new HealthJson.Service(
        own.version(),
        own.database().map(HealthController::database).orElse(null),
        own.disk().map(HealthController::disk).orElse(null),
        own.dropFolders().stream().map(HealthController::dropFolder).toList(),
        others.heard());
  }

  private static HealthJson.Database database(ServiceHealthReader.Database database) {
    return new HealthJson.Database(
        database.latency().toNanos() / 1e6,
        new HealthJson.Ledger(
            database.unsealed(),
            database.oldestUnsealedAt().orElse(null),
            database.lastBlockAt().orElse(null)),
        new HealthJson.Events(database.unfinished(), database.oldestUnfinishedAt().orElse(null)),
        database.oneRole());
  }

  private static HealthJson.Disk disk(DataDisk.Space space) {
    return new HealthJson.Disk(
        space.freeBytes(), space.totalBytes(), space.warnBelowBytes(), space.low());
  }

  private static HealthJson.DropFolder dropFolder(DropFolderStates.State state) {
    return new HealthJson.DropFolder(
        state.station(),
        state.watching(),
        state.waiting(),
        state.taken(),
        state.refused(),
        state.lastTakenAt(),
        state.problem());
  }
}
