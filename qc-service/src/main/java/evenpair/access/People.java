package evenpair.access;

import java.util.Optional;
import java.util.UUID;

/**
 * Names and badges stand here only; everything else holds the random reference, so that a name can
 * be erased.
 */
public interface People {
  /**
   * Finds the person of that name or badge, or adds one. To be called inside the caller's
   * transaction.
   *
   * @param nameOrBadge 1 to 64 characters, as typed or scanned
   * @return the person's random reference
   */
  UUID refer(String nameOrBadge);

  /**
   * @return the name to show; empty once it has been erased
   */
  Optional<String> nameOf(UUID person);
}
