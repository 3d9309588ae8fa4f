package evenpair.statistics;

import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;

/**
 * Principal components of a sample of rows: the directions in which the rows vary most, by the
 * singular value decomposition X = U·D·Vᵀ of the centred rows; the variances are d²/(n − 1).
 * Source: I. T. Jolliffe, Principal Component Analysis, 2nd edition, Springer 2002 (from memory).
 *
 * <p>A vector's sign is free; here its largest element is above 0.
 */
public final class PrincipalComponents {
  /** Variances below this share of the largest one are rounding, not spread. */
  private static final double ROUNDING = 1e-12;

  private final int rows;
  private final double[] centre;
  private final double[] scale;
  private final double[] variances;
  private final double[][] vectors;

  private PrincipalComponents(double[][] rows, double[] centre, double[] scale) {
    this.rows = rows.length;
    this.centre = centre;
    this.scale = scale;
    double[][] centred = new double[rows.length][];
    for (int r = 0; r < rows.length; r++) {
      centred[r] = standardised(rows[r]);
    }
    SingularValueDecomposition svd = new SingularValueDecomposition(compact(centred));
    double[] singular = svd.getSingularValues();
    double[] all = Arrays.stream(singular).map(d -> d * d / (rows.length - 1)).toArray();
    this.variances = Arrays.copyOf(all, rank(all, Math.min(rows.length - 1, centre.length)));
    this.vectors = new double[variances.length][];
    for (int k = 0; k < variances.length; k++) {
      vectors[k] = signed(svd.getV().getColumn(k));
    }
  }

  /**
   * @param rows two rows at least, equally long, all finite
   * @return components of the covariance matrix
   * @throws IllegalArgumentException if the rows are not such a table
   */
  public static PrincipalComponents ofCovariance(double[][] rows) {
    requireTable(rows);
    double[] ones = new double[rows[0].length];
    Arrays.fill(ones, 1);
    return new PrincipalComponents(rows, means(rows), ones);
  }

  /**
   * As {@link #ofCovariance}, of the correlation matrix: each column is divided by its standard
   * deviation first.
   *
   * @throws IllegalArgumentException also if a column does not vary
   */
  public static PrincipalComponents ofCorrelation(double[][] rows) {
    requireTable(rows);
    double[] deviations = new double[rows[0].length];
    for (int c = 0; c < deviations.length; c++) {
      int column = c;
      double[] values = Arrays.stream(rows).mapToDouble(row -> row[column]).toArray();
      deviations[c] = Description.of(values).sd();
      if (!(deviations[c] > 0)) {
        throw new IllegalArgumentException("column " + c + " does not vary");
      }
    }
    return new PrincipalComponents(rows, means(rows), deviations);
  }

  /**
   * @return how many rows the components were found from
   */
  public int rows() {
    return rows;
  }

  /**
   * @return the mean of each column; a new array at each call
   */
  public double[] mean() {
    return centre.clone();
  }

  /**
   * @return variance along each component, falling, as many as the rows span; a new array
   */
  public double[] variances() {
    return variances.clone();
  }

  /**
   * @param component 0 for the first
   * @return its direction, of length 1; a new array
   */
  public double[] vector(int component) {
    return vectors[component].clone();
  }

  /**
   * @param share of the whole variance wanted, 0 … 1
   * @return how many of the first components hold that share
   */
  public int componentsFor(double share) {
    double whole = Arrays.stream(variances).sum();
    double held = 0;
    int count = 0;
    while (count < variances.length && held < share * whole) {
      held += variances[count++];
    }
    return count;
  }

  /**
   * How many of the first components say more than chance divides up: those whose share of the
   * variance exceeds that of a stick broken at random, (1/p)·Σ_{i≥k} 1/i for the k-th longest of p
   * pieces. Source: D. A. Jackson, Ecology 74 (1993) 2204–2214 (from memory).
   *
   * @return 0 upwards
   */
  public int componentsAboveBrokenStick() {
    double whole = Arrays.stream(variances).sum();
    int pieces = variances.length;
    int count = 0;
    while (count < pieces && variances[count] / whole > piece(count + 1, pieces)) {
      count++;
    }
    return count;
  }

  private static double piece(int k, int pieces) {
    double sum = 0;
    for (int i = k; i <= pieces; i++) {
      sum += 1.0 / i;
    }
    return sum / pieces;
  }

  /**
   * Hotelling's T² of a row on the first components: Σ score²/variance. On all of them it is (x −
   * m)ᵀ·S⁻¹·(x − m).
   *
   * @param row as long as the table's rows, finite
   * @param components 1 up to the number of variances
   */
  public double tSquared(double[] row, int components) {
    double[] standardised = standardised(row);
    double sum = 0;
    for (int k = 0; k < components; k++) {
      double score = dot(vectors[k], standardised);
      sum += score * score / variances[k];
    }
    return sum;
  }

  /**
   * @return what the first components say of the row: its deviation from the mean as far as they
   *     hold it, in the columns' own unit
   */
  public double[] explained(double[] row, int components) {
    double[] standardised = standardised(row);
    double[] explained = new double[centre.length];
    for (int k = 0; k < components; k++) {
      double score = dot(vectors[k], standardised);
      for (int c = 0; c < explained.length; c++) {
        explained[c] += score * vectors[k][c] * scale[c];
      }
    }
    return explained;
  }

  /**
   * @return the row's score on each of the first components: its deviation from the mean along
   *     their directions
   */
  public double[] scores(double[] row, int components) {
    double[] standardised = standardised(row);
    double[] scores = new double[components];
    for (int k = 0; k < components; k++) {
      scores[k] = dot(vectors[k], standardised);
    }
    return scores;
  }

  private double[] standardised(double[] row) {
    double[] standardised = new double[centre.length];
    for (int c = 0; c < centre.length; c++) {
      standardised[c] = (row[c] - centre[c]) / scale[c];
    }
    return standardised;
  }

  /**
   * A table higher than it is wide has the singular values and right vectors of its triangular
   * factor R (T. F. Chan, ACM Transactions on Mathematical Software 8 (1982) 72–83): of many curves
   * that is far quicker to decompose.
   */
  private static RealMatrix compact(double[][] rows) {
    RealMatrix table = new Array2DRowRealMatrix(rows, false);
    int columns = table.getColumnDimension();
    return table.getRowDimension() <= columns
        ? table
        : new QRDecomposition(table).getR().getSubMatrix(0, columns - 1, 0, columns - 1);
  }

  private static int rank(double[] variances, int most) {
    int rank = 0;
    while (rank < Math.min(most, variances.length) && variances[rank] > ROUNDING * variances[0]) {
      rank++;
    }
    return rank;
  }

  private static double[] signed(double[] vector) {
    int largest = 0;
    for (int c = 1; c < vector.length; c++) {
      largest = Math.abs(vector[c]) > Math.abs(vector[largest]) ? c : largest;
    }
    double sign = Math.signum(vector[largest]);
    return Arrays.stream(vector).map(value -> sign * value).toArray();
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  private static double[] means(double[][] rows) {
    double[] means = new double[rows[0].length];
    for (int c = 0; c < means.length; c++) {
      int column = c;
      means[c] = Description.of(Arrays.stream(rows).mapToDouble(r -> r[column]).toArray()).mean();
    }
    return means;
  }

  private static void requireTable(double[][] rows) {
    if (rows.length < 2 || rows[0].length == 0) {
      throw new IllegalArgumentException("principal components need two rows of numbers at least");
    }
    for (double[] row : rows) {
      if (row.length != rows[0].length || !Arrays.stream(row).allMatch(Double::isFinite)) {
        throw new IllegalArgumentException("rows must be equally long and finite");
      }
    }
  }
}
