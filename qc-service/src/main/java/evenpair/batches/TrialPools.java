package evenpair.batches;

import evenpair.acoustics.Band;
import evenpair.acoustics.Smoothing;
import evenpair.inspections.RecordedUnits;
import evenpair.inspections.RecordedUnits.RecordedUnit;
import evenpair.inspections.RecordedUnits.Which;
import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.PairTable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;

/**
 * Keeps what was loaded last, so that the second trial on the same units reads nothing. What is
 * kept can be built again by any process, and is not used once a further inspection has closed.
 */
@Component
class TrialPools {
  /** Three curves of 241 floats a pair: 200 000 pairs are 580 MB. */
  private static final int MOST_ROWS = 200_000;

  private static final int MOST_POOLS = 4;

  private final RecordedUnits recorded;
  private final Map<Key, Pool> pools = new LinkedHashMap<>(8, 0.75f, true);

  /** The table depends on no limit, but on what the limits are laid on. */
  private record Key(Which which, UUID golden, Smoothing smoothing, Band alignmentBand) {}

  private record Pool(long count, TrialUnits units) {}

  TrialPools(RecordedUnits recorded) {
    this.recorded = recorded;
  }

  /**
   * @param frame its golden response, smoothing and alignment band are used
   */
  synchronized TrialUnits of(Which which, StoredLimitSet frame) {
    Key key = new Key(which, frame.goldenId(), frame.set().smoothing(), frame.set().level().band());
    long count = recorded.count(which);
    Pool known = pools.get(key);
    if (known == null || known.count != count) {
      known = new Pool(count, load(which, frame));
      pools.put(key, known);
      forgetTheOldest();
    }
    return known.units;
  }

  private void forgetTheOldest() {
    Iterator<Pool> oldest = pools.values().iterator();
    int rows = pools.values().stream().mapToInt(pool -> pool.units.table().rows()).sum();
    int left = pools.size();
    while (left > 1 && (left > MOST_POOLS || rows > MOST_ROWS)) {
      rows -= oldest.next().units.table().rows();
      oldest.remove();
      left--;
    }
  }

  private TrialUnits load(Which which, StoredLimitSet frame) {
    List<RecordedUnit> all = recorded.find(which);
    List<RecordedUnit> first = firstOfEachSerial(all);
    Map<UUID, Integer> unitOf = new HashMap<>();
    Map<TrialUnits.Group, Integer> groups = new LinkedHashMap<>();
    for (int u = 0; u < first.size(); u++) {
      unitOf.put(first.get(u).inspection(), u);
      groups.putIfAbsent(group(first.get(u)), groups.size());
    }
    PairTable table = new PairTable(frame.set(), frame.golden());
    int[] row = new int[first.size()];
    Arrays.fill(row, -1);
    recorded.levels(
        which,
        (inspection, left, right) -> {
          Integer unit = unitOf.get(inspection);
          if (unit != null) {
            row[unit] = table.add(groups.get(group(first.get(unit))), left, right);
          }
        });
    List<TrialUnits.Group> names = new ArrayList<>(groups.keySet());
    return new TrialUnits(first, row, table, names, all.size() - first.size());
  }

  private static TrialUnits.Group group(RecordedUnit unit) {
    return new TrialUnits.Group(unit.station(), unit.uncertainty());
  }

  private static List<RecordedUnit> firstOfEachSerial(List<RecordedUnit> all) {
    Set<String> serials = new HashSet<>();
    return all.stream().filter(unit -> serials.add(unit.serial())).toList();
  }
}
