package evenpair.inspections;

import evenpair.inspections.Inspections.BatchCurves;
import java.lang.ref.SoftReference;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;

/**
 * The batches read last, so that the panels of one page do not read the same curves again and
 * again. A closed inspection never changes: a batch is the same while it has as many of them, the
 * last one closed at the same time. What memory is short of is given up and read again.
 */
final class ReadBatches {
  private static final int KEPT = 4;

  private final Map<Key, Slot> slots =
      new LinkedHashMap<>(KEPT, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, Slot> eldest) {
          return size() > KEPT;
        }
      };

  /**
   * @param version null for every one
   * @param locale of the reasons' sentences
   */
  record Key(String batch, String product, String tuning, Integer version, Locale locale) {}

  /**
   * @param closed how many inspections are closed
   * @param last when the last of them was; null without any
   */
  record Stamp(long closed, Instant last) {}

  private static final class Slot {
    private Stamp stamp;
    private SoftReference<BatchCurves> curves = new SoftReference<>(null);
  }

  /**
   * @param stamp taken before reading: what comes in meanwhile makes the next call read again
   */
  BatchCurves get(Key key, Stamp stamp, Supplier<BatchCurves> read) {
    Slot slot;
    synchronized (slots) {
      slot = slots.computeIfAbsent(key, k -> new Slot());
    }
    synchronized (slot) { // who asks for the same waits for it instead of reading it too
      BatchCurves known = slot.curves.get();
      if (known == null || !stamp.equals(slot.stamp)) {
        known = read.get();
        slot.curves = new SoftReference<>(known);
        slot.stamp = stamp;
      }
      return known;
    }
  }
}
