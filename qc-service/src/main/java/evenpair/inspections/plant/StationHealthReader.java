package evenpair.inspections.plant;

import evenpair.inspections.plant.StationHealth.Blocked;
import evenpair.inspections.plant.StationHealth.FirstPass;
import evenpair.inspections.plant.StationHealth.Validity;
import evenpair.stations.Block;
import evenpair.stations.Stations;
import evenpair.stations.Stations.Chain;
import evenpair.tolerance.Channel;
import evenpair.web.Texts;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Puts together how every station is doing now. */
@Component
class StationHealthReader {
  static final Duration FIRST_PASS_SPAN = Duration.ofHours(1);
  static final Duration MOUNTINGS_SPAN = Duration.ofHours(8);
  static final int LAST_VERDICTS = 12;

  private final Stations stations;
  private final StationFigures figures;
  private final HeldReports held;
  private final Texts texts;
  private final Clock clock;

  StationHealthReader(
      Stations stations, StationFigures figures, HeldReports held, Texts texts, Clock clock) {
    this.stations = stations;
    this.figures = figures;
    this.held = held;
    this.texts = texts;
    this.clock = clock;
  }

  /**
   * @return every station by name
   */
  @Transactional(readOnly = true)
  public List<StationHealth> all(Locale locale) {
    Instant now = clock.instant();
    var verdicts = figures.verdicts(LAST_VERDICTS);
    var firstPass = figures.firstPass(now.minus(FIRST_PASS_SPAN));
    var mountings = figures.mountings(now.minus(MOUNTINGS_SPAN));
    var attempts = figures.lastAttempts();
    Map<String, HeldReports.Report> reports = new HashMap<>();
    held.all().forEach(report -> reports.put(report.station(), report));
    return stations.names().stream()
        .map(
            station ->
                new StationHealth(
                    station,
                    verdicts.getOrDefault(station, List.of()),
                    firstPass.getOrDefault(station, new FirstPass(0, 0)),
                    mountings.getOrDefault(station, List.of()),
                    calibrations(station, now),
                    stations.verificationsAt(station, now),
                    stations.blockedAt(station, now).map(block -> blocked(block, locale)),
                    Optional.ofNullable(reports.get(station)),
                    newest(attempts.get(station), reports.get(station))))
        .toList();
  }

  private static Optional<Instant> newest(Instant attempt, HeldReports.Report report) {
    Instant reported = report == null ? null : report.reportedAt();
    return Stream.of(Optional.ofNullable(attempt), Optional.ofNullable(reported))
        .flatMap(Optional::stream)
        .max(Instant::compareTo);
  }

  private List<Validity> calibrations(String station, Instant now) {
    Optional<Chain> chain = stations.chainAt(station, now);
    List<Validity> all = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      all.add(
          new Validity(
              "microphone-" + channel.word(),
              chain
                  .map(found -> found.microphones().get(channel))
                  .map(Stations.Microphone::validUntil)));
    }
    all.add(new Validity("output", chain.flatMap(Chain::output).map(Stations.Output::validUntil)));
    all.add(
        new Validity(
            "correction", chain.flatMap(Chain::correction).map(Stations.Correction::validUntil)));
    return all;
  }

  private Blocked blocked(Block block, Locale locale) {
    Map<String, Object> values = new LinkedHashMap<>();
    block.channel().ifPresent(channel -> values.put("channel", channel.word()));
    block.region().ifPresent(region -> values.put("region", region));
    block.measured().ifPresent(db -> values.put("measured", db));
    block.limit().ifPresent(db -> values.put("limit", db));
    String cause = block.cause().word();
    return new Blocked(
        cause, block.since(), texts.render(locale, "station.block." + cause, values));
  }
}
