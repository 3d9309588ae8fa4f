package evenpair.inspections;

import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * Tells others what has been recorded: other modules for certain (event registry), live screens if
 * they listen.
 */
@Component
class Announcements {
  private final ApplicationEventPublisher publisher;
  private final LiveEvents live;

  Announcements(ApplicationEventPublisher publisher, LiveEvents live) {
    this.publisher = publisher;
    this.live = live;
  }

  /** To be called in the record's transaction; screens hear of it after the commit only. */
  void attempt(InspectionRow row) {
    LiveEvents.Note note = LiveEvents.Note.of(row);
    afterCommit(
        () -> {
          live.send("attempt", note);
          if (row.state() != InspectionState.OPEN) {
            live.send("inspection-closed", note);
          }
        });
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
    LiveEvents.Note note = LiveEvents.Note.of(row);
    afterCommit(() -> live.send("inspection-closed", note));
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
