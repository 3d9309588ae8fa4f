package evenpair.certificates;

import evenpair.ledger.Ledger;
import evenpair.ledger.Ledger.Seal;
import java.time.Duration;
import java.util.Optional;
import java.util.UUID;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.stereotype.Component;

/**
 * Waits for the block that seals a record: one is written every second at least, so a few seconds
 * are enough unless something is wrong.
 */
@Component
class SealWait {
  private static final String KIND = "inspection-closed";
  private static final Duration PAUSE = Duration.ofMillis(100);
  private static final int LOOKS = 50;

  private final Ledger ledger;
  private final Pause pause;

  @Autowired
  SealWait(Ledger ledger) {
    this(ledger, duration -> Thread.sleep(duration.toMillis()));
  }

  SealWait(Ledger ledger, Pause pause) {
    this.ledger = ledger;
    this.pause = pause;
  }

  /**
   * @return the seal of the inspection's closing
   * @throws NotYetSealed if no block holds it after five seconds
   */
  Seal sealOf(UUID inspection) {
    for (int look = 1; look <= LOOKS; look++) {
      Optional<Seal> seal = ledger.sealOf(KIND, inspection);
      if (seal.isPresent()) {
        return seal.get();
      }
      rest();
    }
    throw new NotYetSealed();
  }

  private void rest() {
    try {
      pause.rest(PAUSE);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new NotYetSealed();
    }
  }

  /** How time passes between two looks; tests let none pass. */
  interface Pause {
    void rest(Duration duration) throws InterruptedException;
  }
}
