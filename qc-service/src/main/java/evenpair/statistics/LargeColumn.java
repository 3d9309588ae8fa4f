package evenpair.statistics;

import java.util.Arrays;

/**
 * Describes a long column without sorting it: the numbers are counted into buckets of equal width,
 * and only the buckets that hold a wanted order statistic are sorted. The order statistics are
 * exact, as if all had been sorted. Sums are taken from numbers less the first one, in double: of
 * 32-bit numbers that loses nothing that counts.
 */
final class LargeColumn {
  private static final int BUCKETS = 4096;

  private final int[] counts = new int[BUCKETS];
  private final boolean[] wanted = new boolean[BUCKETS];
  private float[] kept = new float[1024];

  /**
   * @param values the first count of them are looked at; finite
   * @param count 2 upwards
   */
  Description describe(float[] values, int count, double... percents) {
    double origin = values[0];
    double sum = 0;
    double squares = 0;
    float least = values[0];
    float most = values[0];
    for (int i = 0; i < count; i++) {
      double off = values[i] - origin;
      sum += off;
      squares += off * off;
      least = values[i] < least ? values[i] : least; // Math.min would look for −0 each time
      most = values[i] > most ? values[i] : most;
    }
    if (!Float.isFinite(least) || !Float.isFinite(most) || Double.isNaN(sum)) {
      throw new IllegalArgumentException("a sample must be finite, has " + least + " … " + most);
    }
    double sd = Math.sqrt(Math.max(0, squares - sum * sum / count) / (count - 1));
    return new Description(
        count, origin + sum / count, sd, percentiles(values, count, least, most, percents));
  }

  private double[] percentiles(
      float[] values, int count, float least, float most, double... percents) {
    double scale = most > least ? (BUCKETS - 1) / ((double) most - least) : 0;
    Arrays.fill(counts, 0);
    for (int i = 0; i < count; i++) {
      counts[bucket(values[i], least, scale)]++;
    }
    Arrays.fill(wanted, false);
    for (double percent : percents) {
      double place = (count - 1) * percent / 100;
      wanted[bucketOfRank((int) place)] = true;
      wanted[bucketOfRank(Math.min((int) place + 1, count - 1))] = true;
    }
    int size = collect(values, count, least, scale);
    Arrays.sort(kept, 0, size);
    double[] found = new double[percents.length];
    for (int i = 0; i < percents.length; i++) {
      double place = (count - 1) * percents[i] / 100;
      int below = (int) place;
      double low = kept[placeOfRank(below)];
      double high = kept[placeOfRank(Math.min(below + 1, count - 1))];
      found[i] = low + (place - below) * (high - low);
    }
    return found;
  }

  /** Rises with the value: rounding keeps the order of what it rounds. */
  private static int bucket(float value, float least, double scale) {
    return (int) (((double) value - least) * scale);
  }

  private int collect(float[] values, int count, float least, double scale) {
    int size = 0;
    for (int i = 0; i < count; i++) {
      if (wanted[bucket(values[i], least, scale)]) {
        if (size == kept.length) {
          kept = Arrays.copyOf(kept, 2 * size);
        }
        kept[size++] = values[i];
      }
    }
    return size;
  }

  private int bucketOfRank(int rank) {
    int before = 0;
    int bucket = 0;
    while (before + counts[bucket] <= rank) {
      before += counts[bucket++];
    }
    return bucket;
  }

  /**
   * @return where a wanted order statistic stands among the kept numbers
   */
  private int placeOfRank(int rank) {
    int before = 0;
    int place = rank;
    for (int bucket = 0; before + counts[bucket] <= rank; bucket++) {
      before += counts[bucket];
      place -= wanted[bucket] ? 0 : counts[bucket];
    }
    return place;
  }
}
