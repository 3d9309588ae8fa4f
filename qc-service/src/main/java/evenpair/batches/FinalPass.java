package evenpair.batches;

import evenpair.inspections.Inspections.BatchCurves;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.statistics.Proportion;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/**
 * How many units of a batch went out: each by its last closed inspection of production or rework.
 * What an audit or a return found came after.
 */
final class FinalPass {
  private static final Set<String> ON_THE_LINE = Set.of("production", "rework");

  private FinalPass() {}

  static Proportion of(BatchCurves batch) {
    Map<String, BatchUnit> last = new LinkedHashMap<>();
    for (BatchUnit unit : batch.units()) {
      if (ON_THE_LINE.contains(unit.occasion())) {
        last.put(unit.serial(), unit);
      }
    }
    int passed = (int) last.values().stream().filter(unit -> "PASS".equals(unit.verdict())).count();
    return new Proportion(passed, last.size());
  }
}
