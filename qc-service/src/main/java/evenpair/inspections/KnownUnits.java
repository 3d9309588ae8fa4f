package evenpair.inspections;

import java.util.Collection;
import java.util.Map;

/** Which serial numbers have been inspected, many at once. */
public interface KnownUnits {
  /**
   * @param sent serial numbers as typed or scanned
   * @return by what was sent: the units that have been inspected; unknown ones are missing
   */
  Map<String, KnownUnit> of(Collection<String> sent);

  /**
   * @param serial as stored
   * @param batch of its newest inspection
   * @param verdict PASS, FAIL or INCOMPLETE over the tunings that the product requires
   */
  record KnownUnit(String serial, String product, String batch, String verdict) {}
}
