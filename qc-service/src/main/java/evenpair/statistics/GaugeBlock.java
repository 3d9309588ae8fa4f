package evenpair.statistics;

import evenpair.statistics.GaugeStudy.Source;

/** Means and sums of squares of a full block of part × station × repeat. */
final class GaugeBlock {
  private final double[][][] values;
  private final int p;
  private final int q;
  private final int r;
  private final double[][] cells;
  private final double[] partMeans;
  private final double[] stationMeans;
  private final double mean;

  GaugeBlock(double[][][] values) {
    this.values = values;
    p = values.length;
    q = p == 0 ? 0 : values[0].length;
    r = q == 0 ? 0 : values[0][0].length;
    requireFull();
    cells = new double[p][q];
    for (int i = 0; i < p; i++) {
      for (int j = 0; j < q; j++) {
        cells[i][j] = Description.of(values[i][j]).mean();
      }
    }
    partMeans = new double[p];
    for (int i = 0; i < p; i++) {
      partMeans[i] = Description.of(cells[i]).mean();
    }
    stationMeans = new double[q];
    for (int j = 0; j < q; j++) {
      stationMeans[j] = Description.of(column(j)).mean();
    }
    mean = Description.of(partMeans).mean();
  }

  int partCount() {
    return p;
  }

  int stationCount() {
    return q;
  }

  int repeatCount() {
    return r;
  }

  Source parts() {
    return new Source((double) q * r * squares(partMeans), p - 1);
  }

  Source stations() {
    return new Source((double) p * r * squares(stationMeans), q - 1);
  }

  Source interaction() {
    CompensatedSum sum = new CompensatedSum();
    for (int i = 0; i < p; i++) {
      for (int j = 0; j < q; j++) {
        double left = cells[i][j] - partMeans[i] - (stationMeans[j] - mean);
        sum.add(left * left);
      }
    }
    return new Source(r * sum.value(), (p - 1) * (q - 1));
  }

  Source repeats() {
    CompensatedSum sum = new CompensatedSum();
    for (int i = 0; i < p; i++) {
      for (int j = 0; j < q; j++) {
        for (double value : values[i][j]) {
          sum.add((value - cells[i][j]) * (value - cells[i][j]));
        }
      }
    }
    return new Source(sum.value(), p * q * (r - 1));
  }

  private double squares(double[] means) {
    CompensatedSum sum = new CompensatedSum();
    for (double one : means) {
      sum.add((one - mean) * (one - mean));
    }
    return sum.value();
  }

  private double[] column(int station) {
    double[] column = new double[p];
    for (int i = 0; i < p; i++) {
      column[i] = cells[i][station];
    }
    return column;
  }

  private void requireFull() {
    if (p < 2 || q < 2 || r < 2) {
      throw new IllegalArgumentException(
          "a gauge study needs 2 parts, 2 stations and 2 repeats at least, has "
              + p
              + ", "
              + q
              + ", "
              + r);
    }
    for (double[][] part : values) {
      for (double[] cell : part) {
        if (part.length != q || cell.length != r) {
          throw new IllegalArgumentException(
              "every part needs " + q + " stations and " + r + " repeats each");
        }
      }
    }
  }
}
