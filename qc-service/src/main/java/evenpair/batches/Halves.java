package evenpair.batches;

import evenpair.inspections.RecordedUnits.RecordedUnit;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.List;

/**
 * Units in two halves by their serials, so that the same unit is always in the same half, and
 * neither time, station nor anybody's hand divides them.
 *
 * @param shaping rows of the first half's units that tell centre and spread: those that passed,
 *     unless none did
 * @param counting rows of the second half's units
 * @param units in both halves together
 * @param batches that they come from
 * @param order rows of both halves in production order
 */
record Halves(int[] shaping, int[] counting, int units, List<String> batches, int[] order) {

  /**
   * @param passedOnly true: units that were recorded as FAIL are not of the population
   */
  static Halves of(TrialUnits all, boolean passedOnly) {
    List<Integer> first = new ArrayList<>();
    List<Integer> firstPassed = new ArrayList<>();
    List<Integer> second = new ArrayList<>();
    List<Integer> order = new ArrayList<>();
    List<String> batches = new ArrayList<>();
    for (int u = 0; u < all.units().size(); u++) {
      RecordedUnit unit = all.units().get(u);
      boolean passed = "PASS".equals(unit.verdict());
      if (all.row()[u] < 0 || passedOnly && !passed) {
        continue;
      }
      int row = all.row()[u];
      order.add(row);
      batches.add(unit.batch());
      if (inSecondHalf(unit.serial())) {
        second.add(row);
      } else {
        first.add(row);
        if (passed) {
          firstPassed.add(row);
        }
      }
    }
    return new Halves(
        array(firstPassed.size() < 2 ? first : firstPassed),
        array(second),
        order.size(),
        batches.stream().distinct().sorted().toList(),
        array(order));
  }

  /** The lowest bit of the first byte of the serial's SHA-256. */
  static boolean inSecondHalf(String serial) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(serial.getBytes(StandardCharsets.UTF_8));
      return (digest[0] & 1) == 1;
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  private static int[] array(List<Integer> rows) {
    return rows.stream().mapToInt(Integer::intValue).toArray();
  }
}
