package evenpair.statistics;

/**
 * Crossed gauge study by two-way analysis of variance: each part measured by each appraiser (a
 * station or a person) the same number of times. Both are taken for random samples.
 *
 * <p>The table is a flat array with the trial running fastest: value of part p, appraiser a, trial
 * t at {@code (p·A + a)·T + t}, so that the hundreds of quantities of one study (each grid point,
 * each region) are analysed one after the other without any objects a value.
 *
 * <p>The interaction of parts and appraisers is pooled with the repeat spread when its p is above a
 * threshold (0.25, common practice), and only then: EV² = pooled mean square. Variance components
 * by expected mean squares; one that comes out below 0 is taken for 0, and the result says so.
 * Source of the published example in the tests: AIAG, Measurement Systems Analysis, 4th edition.
 */
public final class GaugeStudy {
  /** Interaction is pooled when its p is above this. Common practice, no source. */
  public static final double POOL_ABOVE = 0.25;

  private final int parts;
  private final int appraisers;
  private final int trials;

  /**
   * @param parts two at least
   * @param appraisers two at least: with one, nothing tells reproducibility (see {@link
   *     OneWayAnova})
   * @param trials two at least
   */
  public GaugeStudy(int parts, int appraisers, int trials) {
    if (parts < 2 || appraisers < 2 || trials < 2) {
      throw new IllegalArgumentException(
          "a crossed study needs 2 parts, 2 appraisers and 2 trials at least, was "
              + parts
              + " × "
              + appraisers
              + " × "
              + trials);
    }
    this.parts = parts;
    this.appraisers = appraisers;
    this.trials = trials;
  }

  /**
   * @return parts × appraisers × trials
   */
  public int size() {
    return parts * appraisers * trials;
  }

  /**
   * @return where the value stands in the table; all counted from 0
   */
  public int index(int part, int appraiser, int trial) {
    return (part * appraisers + appraiser) * trials + trial;
  }

  /** As {@link #analyse(double[], double)} with the usual threshold {@link #POOL_ABOVE}. */
  public GaugeResult analyse(double[] table) {
    return analyse(table, POOL_ABOVE);
  }

  /**
   * @param table {@link #size()} finite values
   * @param poolAbove interaction is pooled when its p is above this, 0 … 1; with 1 never
   * @throws IllegalArgumentException if the table has another size or a value is not finite
   */
  public GaugeResult analyse(double[] table, double poolAbove) {
    double[] values = centred(table);
    double[] part = new double[parts];
    double[] appraiser = new double[appraisers];
    double[] cell = new double[parts * appraisers];
    for (int c = 0; c < cell.length; c++) {
      for (int t = 0; t < trials; t++) {
        cell[c] += values[c * trials + t] / trials;
      }
      part[c / appraisers] += cell[c] / appraisers;
      appraiser[c % appraisers] += cell[c] / parts;
    }
    return GaugeResult.of(
        new GaugeTable(
            source(squares(part) * appraisers * trials, parts - 1),
            source(squares(appraiser) * parts * trials, appraisers - 1),
            source(interaction(cell, part, appraiser) * trials, (parts - 1) * (appraisers - 1)),
            source(repeat(values, cell), parts * appraisers * (trials - 1))),
        parts,
        appraisers,
        trials,
        poolAbove);
  }

  /**
   * Less their mean, and less the mean of what rounding left: means of the effects then sum to 0.
   */
  private double[] centred(double[] table) {
    if (table.length != size()) {
      throw new IllegalArgumentException(
          "the study has " + size() + " values, was given " + table.length);
    }
    double[] values = table.clone();
    for (int pass = 0; pass < 2; pass++) {
      CompensatedSum sum = new CompensatedSum();
      for (double value : values) {
        sum.add(value);
      }
      double mean = sum.value() / values.length;
      if (!Double.isFinite(mean)) {
        throw new IllegalArgumentException("values must be finite");
      }
      for (int i = 0; i < values.length; i++) {
        values[i] -= mean;
      }
    }
    return values;
  }

  private static double squares(double[] effects) {
    double sum = 0;
    for (double effect : effects) {
      sum += effect * effect;
    }
    return sum;
  }

  private double interaction(double[] cell, double[] part, double[] appraiser) {
    double sum = 0;
    for (int c = 0; c < cell.length; c++) {
      double effect = cell[c] - part[c / appraisers] - appraiser[c % appraisers];
      sum += effect * effect;
    }
    return sum;
  }

  private double repeat(double[] values, double[] cell) {
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      double off = values[i] - cell[i / trials];
      sum += off * off;
    }
    return sum;
  }

  private static OneWayAnova.Source source(double squares, int freedom) {
    return new OneWayAnova.Source(squares, freedom);
  }
}
