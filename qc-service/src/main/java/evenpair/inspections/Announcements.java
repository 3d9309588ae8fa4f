package evenpair.inspections;

import evenpair.inspections.plant.StationNews;
import java.util.List;
import java.util.Map;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import tools.jackson.databind.json.JsonMapper;

/**
 * Tells others what has been recorded: other modules for certain (event registry), live screens if
 * they listen.
 */
@Component
class Announcements implements StationNews {
  private final ApplicationEventPublisher publisher;
  private final LiveEvents live;
  private final LiveWire wire;
  private final JdbcClient jdbc;
  private final JsonMapper mapper;
  private final IngestMeters meters;

  Announcements(
      ApplicationEventPublisher publisher,
      LiveEvents live,
      LiveWire wire,
      JdbcClient jdbc,
      JsonMapper mapper,
      IngestMeters meters) {
    this.publisher = publisher;
    this.live = live;
    this.wire = wire;
    this.jdbc = jdbc;
    this.mapper = mapper;
    this.meters = meters;
  }

  /** To be called in the record's transaction; screens hear of it after the commit only. */
  void attempt(InspectionRow row) {
    List<String> events =
        row.state() == InspectionState.OPEN
            ? List.of("attempt")
            : List.of("attempt", "inspection-closed");
    LiveEvents.Note note = LiveEvents.Note.of(row);
    tell(events, note);
    afterCommit(() -> meters.recorded(note));
  }

  /** To be called in a transaction; a station has told something of itself. */
  @Override
  public void station(String station) {
    tell(List.of("station"), Map.of("station", station));
  }

  /** Here once the transaction has committed; to other processes through the database, likewise. */
  private void tell(List<String> events, Object note) {
    String json = mapper.writeValueAsString(note);
    wire.tell(jdbc, events, json);
    afterCommit(() -> events.forEach(event -> live.send(event, json)));
  }

  /** To be called in the record's transaction. */
  void closed(InspectionRow row) {
    publisher.publishEvent(
        new InspectionClosed(
            row.id(),
            row.serial(),
            row.batch(),
            row.product(),
            row.tuning(),
            row.station(),
            row.occasion().word(),
            row.verdict().name(),
            row.closedAt()));
  }

  /** To be called in the transaction of the abandonment. */
  void abandoned(InspectionRow row) {
    tell(List.of("inspection-closed"), LiveEvents.Note.of(row));
  }

  private static void afterCommit(Runnable action) {
    TransactionSynchronizationManager.registerSynchronization(
        new TransactionSynchronization() {
          @Override
          public void afterCommit() {
            action.run();
          }
        });
  }
}
