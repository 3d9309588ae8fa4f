package evenpair.inspections;

import java.time.Clock;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;

/** Forgets Idempotency-Keys that are older than the settings say. */
@Component
class KeyCleaning {
  private static final Logger LOG = LoggerFactory.getLogger(KeyCleaning.class);

  private final IdempotencyKeys keys;
  private final InspectionSettings settings;
  private final Clock clock;

  KeyCleaning(IdempotencyKeys keys, InspectionSettings settings, Clock clock) {
    this.keys = keys;
    this.settings = settings;
    this.clock = clock;
  }

  @Scheduled(
      fixedDelayString = "${evenpair.inspections.key-cleaning:12h}",
      initialDelayString = "10m")
  void clean() {
    int forgotten = keys.forgetBefore(clock.instant().minus(settings.keepKeys()));
    if (forgotten > 0) {
      LOG.info("{} Idempotency-Keys older than {} forgotten", forgotten, settings.keepKeys());
    }
  }
}
