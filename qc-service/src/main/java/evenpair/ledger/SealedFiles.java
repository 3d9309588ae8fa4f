package evenpair.ledger;

import java.util.Optional;

/** Lets the check look into the store of captures, which the ledger itself does not know. */
public interface SealedFiles {
  /**
   * @param sha256 the file's name and what its bytes must give, lower-case hex
   * @return what is wrong with it, as the rest of a sentence; empty if its bytes are as sealed
   */
  Optional<String> problem(String sha256);
}
