package evenpair.products;

import evenpair.acoustics.EarSimulator;
import evenpair.tolerance.GoldenResponse;
import evenpair.tolerance.Judge;
import evenpair.tolerance.LimitSet;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * What the plant makes and what it is judged by. Answers from memory once loaded; a change of a
 * version reloads.
 */
public interface Products {
  /**
   * @return every product, by key
   */
  List<Product> all();

  /**
   * @return the product with that key, if known
   */
  Optional<Product> find(String product);

  /**
   * @return the limit set of the tuning that is active at that instant, if any
   */
  Optional<StoredLimitSet> activeAt(String product, String tuning, Instant at);

  /**
   * @return one version of a limit set, approved or not, if it exists
   */
  Optional<StoredLimitSet> limitSet(String product, String tuning, int version);

  /**
   * @return the version with that id; unknown ids are a programming error
   */
  StoredLimitSet limitSet(UUID id);

  /**
   * @param key such as {@code sedge-2}
   * @param name such as {@code Sedge 2}
   * @param maker such as {@code Saltmarsh Works}
   * @param serialPattern regular expression that a whole serial number must match
   */
  record Product(
      String key,
      String name,
      String maker,
      String serialPattern,
      EarSimulator earSimulator,
      List<Tuning> tunings) {
    public Optional<Tuning> tuning(String key) {
      return tunings.stream().filter(t -> t.key().equals(key)).findFirst();
    }
  }

  /**
   * @param required whether a unit needs a closed PASS in this tuning
   */
  record Tuning(String key, boolean required) {}

  /**
   * @param digest SHA-256 of its canonical form together with its golden response's, hex
   * @param judge ready to judge by it
   */
  record StoredLimitSet(
      UUID id, LimitSet set, UUID goldenId, GoldenResponse golden, String digest, Judge judge) {}
}
