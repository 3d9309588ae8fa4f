package evenpair.benchmarks;

import evenpair.acoustics.Grid;
import evenpair.statistics.ColumnStatistics;
import evenpair.statistics.Columns;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * One of the five sets of curves of a batch of 100,000 pairs: mean, standard deviation and five
 * percentiles at each grid point; and a plain sum over the same numbers, the least that anything
 * can take that reads them.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(jvmArgsAppend = "-Xmx1g")
public class BatchBenchmark {
  private static final int PAIRS = 100_000;

  private final float[] curves = new float[PAIRS * Grid.POINTS];

  @Setup
  public void fill() {
    Random random = new Random(1);
    for (int i = 0; i < curves.length; i++) {
      curves[i] = (float) random.nextGaussian();
    }
  }

  @Benchmark
  public double sumAlone() {
    double sum = 0;
    for (float value : curves) {
      sum += value;
    }
    return sum;
  }

  @Benchmark
  public ColumnStatistics describeCurves() {
    return Columns.of(curves, Grid.POINTS).describe(0.5, 2.5, 50, 97.5, 99.5);
  }
}
