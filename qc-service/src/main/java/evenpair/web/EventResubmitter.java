package evenpair.web;

import java.time.Duration;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.modulith.events.FailedEventPublications;
import org.springframework.modulith.events.ResubmissionOptions;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Hands events out again whose listener failed or died with its process. One process at a time, by
 * an advisory lock; a listener may see an event twice and must not mind.
 */
@Component
class EventResubmitter {
  private static final Logger LOG = LoggerFactory.getLogger(EventResubmitter.class);
  private static final long LOCK = 0x6576656e74L;
  private static final ResubmissionOptions OLDER_THAN_A_MINUTE =
      ResubmissionOptions.defaults().withMinAge(Duration.ofMinutes(1));

  private final FailedEventPublications failed;
  private final JdbcClient jdbc;
  private final TransactionTemplate transaction;

  EventResubmitter(
      FailedEventPublications failed, JdbcClient jdbc, TransactionTemplate transaction) {
    this.failed = failed;
    this.jdbc = jdbc;
    this.transaction = transaction;
  }

  @Scheduled(initialDelayString = "PT10S", fixedDelayString = "PT1M")
  void resubmit() {
    try {
      transaction.executeWithoutResult(
          status -> {
            boolean alone =
                jdbc.sql("select pg_try_advisory_xact_lock(?)")
                    .param(LOCK)
                    .query(Boolean.class)
                    .single();
            if (alone) {
              failed.resubmit(OLDER_THAN_A_MINUTE);
            }
          });
    } catch (RuntimeException e) {
      LOG.warn("Events could not be handed out again; tried again in a minute", e);
    }
  }
}
