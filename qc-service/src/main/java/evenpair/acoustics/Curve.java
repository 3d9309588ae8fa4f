package evenpair.acoustics;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/**
 * 241 levels in dB at the points of {@link Grid}; immutable. A point may be absent (a curve from
 * another rig may not reach it): reading an absent level throws, so that no missing number reaches
 * a verdict.
 */
public final class Curve {
  private final double[] db;

  private Curve(double[] db) {
    if (db.length != Grid.POINTS) {
      throw new IllegalArgumentException(
          "a curve has " + Grid.POINTS + " levels, was given " + db.length);
    }
    for (int i = 0; i < db.length; i++) {
      if (Double.isInfinite(db[i])) {
        throw new IllegalArgumentException(
            "level at " + Grid.label(i) + " Hz must be finite, was " + db[i]);
      }
    }
    this.db = db;
  }

  /**
   * @param db 241 levels in dB; NaN marks an absent point
   * @throws IllegalArgumentException if the length is not 241 or a level is infinite
   */
  public static Curve of(double... db) {
    return new Curve(db.clone());
  }

  /** As {@link #of(double...)}, from stored 32-bit floats. */
  public static Curve ofFloats(float[] db) {
    double[] wide = new double[db.length];
    for (int i = 0; i < db.length; i++) {
      wide[i] = db[i];
    }
    return new Curve(wide);
  }

  /**
   * @return the curve whose level at each grid frequency (Hz) is the function's value in dB
   */
  public static Curve from(DoubleUnaryOperator dbAtHz) {
    return new Curve(Arrays.stream(Grid.frequencies()).map(dbAtHz).toArray());
  }

  /**
   * @return true if the point has a level
   */
  public boolean has(int index) {
    return !Double.isNaN(db[index]);
  }

  /**
   * @return true if every grid point of the band has a level
   */
  public boolean covers(Band band) {
    return IntStream.rangeClosed(band.firstIndex(), band.lastIndex()).allMatch(this::has);
  }

  /**
   * @return the level in dB
   * @throws IllegalStateException if the point is absent
   */
  public double at(int index) {
    if (!has(index)) {
      throw new IllegalStateException("no level at " + Grid.label(index) + " Hz");
    }
    return db[index];
  }

  /**
   * @return this plus a constant in dB; absent points stay absent
   */
  public Curve plus(double gainDb) {
    return map(level -> level + gainDb);
  }

  /**
   * @return this + other, point by point in dB; absent where either is absent
   */
  public Curve plus(Curve other) {
    return combine(other, 1);
  }

  /**
   * @return this − other, point by point in dB; absent where either is absent
   */
  public Curve minus(Curve other) {
    return combine(other, -1);
  }

  /**
   * @return this times a factor (half a correction, say); absent points stay absent
   */
  public Curve times(double factor) {
    return map(level -> level * factor);
  }

  /**
   * Mean of the dB values over the band's grid points: (1/n)·Σ L_i.
   *
   * @throws IllegalStateException if the band holds no grid point or one of them is absent
   */
  public double mean(Band band) {
    return Arrays.stream(inside(band)).average().orElseThrow();
  }

  /**
   * Median of the dB values over the band's grid points (mean of the middle two for an even
   * number).
   *
   * @throws IllegalStateException if the band holds no grid point or one of them is absent
   */
  public double median(Band band) {
    double[] sorted = inside(band);
    Arrays.sort(sorted);
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }

  /**
   * @return the mean in dB, point by point, of curves; absent where any of them is absent; one
   *     curve at least
   */
  public static Curve mean(List<Curve> curves) {
    if (curves.isEmpty()) {
      throw new IllegalArgumentException("a mean needs at least one curve");
    }
    double[] sum = new double[Grid.POINTS];
    for (Curve curve : curves) {
      for (int i = 0; i < sum.length; i++) {
        sum[i] += curve.db[i];
      }
    }
    return new Curve(Arrays.stream(sum).map(s -> s / curves.size()).toArray());
  }

  /**
   * @return the 241 levels in dB, NaN where absent; a new array at each call
   */
  public double[] toArray() {
    return db.clone();
  }

  /**
   * @return the 241 levels as the stored 32-bit floats, NaN where absent
   */
  public float[] toFloats() {
    float[] narrow = new float[db.length];
    for (int i = 0; i < db.length; i++) {
      narrow[i] = (float) db[i];
    }
    return narrow;
  }

  private Curve map(DoubleUnaryOperator change) {
    return new Curve(Arrays.stream(db).map(change).toArray());
  }

  private Curve combine(Curve other, int sign) {
    double[] result = new double[db.length];
    for (int i = 0; i < db.length; i++) {
      result[i] = db[i] + sign * other.db[i];
    }
    return new Curve(result);
  }

  private double[] inside(Band band) {
    if (band.points() == 0) {
      throw new IllegalStateException(
          "no grid point between " + band.fromHz() + " and " + band.toHz() + " Hz");
    }
    return IntStream.rangeClosed(band.firstIndex(), band.lastIndex())
        .mapToDouble(this::at)
        .toArray();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Curve curve && Arrays.equals(db, curve.db);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(db);
  }

  @Override
  public String toString() {
    return "Curve[" + db[0] + " dB at 20 Hz … " + db[db.length - 1] + " dB at 20 kHz]";
  }
}
