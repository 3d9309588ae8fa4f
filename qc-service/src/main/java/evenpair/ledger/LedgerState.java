package evenpair.ledger;

import java.time.Instant;
import java.util.Optional;

/** How the sealing is doing, for those who look after the service. */
public interface LedgerState {
  /**
   * @return entries that no block holds yet
   */
  long unsealed();

  /**
   * @return when the oldest of them was written; empty if every entry is sealed
   */
  Optional<Instant> oldestUnsealedAt();

  /**
   * @return when the newest block was made; empty if there is none
   */
  Optional<Instant> lastBlockAt();

  /**
   * @return true if one database role owns the tables and works on them: then only triggers guard
   *     the sealed ones, and the service itself could take those away
   */
  boolean oneRole();
}
