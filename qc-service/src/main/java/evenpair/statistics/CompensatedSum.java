package evenpair.statistics;

/**
 * Sum of many numbers with the rounding error of each addition carried along, so that the result is
 * as if summed with twice the digits. Source: A. Neumaier, Zeitschrift für angewandte Mathematik
 * und Mechanik 54 (1974) 39–51.
 */
final class CompensatedSum {
  private double sum;
  private double lost;

  void add(double term) {
    double next = sum + term;
    lost += Math.abs(sum) >= Math.abs(term) ? (sum - next) + term : (term - next) + sum;
    sum = next;
  }

  double value() {
    return sum + lost;
  }
}
