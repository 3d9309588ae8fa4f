package evenpair.benchmarks;

import evenpair.certificates.CertificateBenchmark;
import evenpair.certificates.ThousandCertificates;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.Options;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/**
 * Runs every benchmark in rounds, each in a process of its own, and prints it as a ratio to the
 * round's reference, so that the machine's speed goes out of it. A round counts with its least
 * time, the one that other work disturbed least; what that work still does shows as the rounds'
 * scatter.
 */
public final class Benchmarks {
  private static final int ROUNDS = Integer.getInteger("rounds", 5);

  /** What each is a ratio to; the others are ratios to a pair's transforms. */
  private static final Map<String, String> REFERENCES =
      Map.of(
          "transformsAlone", "transformsAlone",
          "sumAlone", "sumAlone",
          "describeCurves", "sumAlone",
          "numbersRead", "numbersRead",
          "trial", "numbersRead",
          "criticalScales", "numbersRead");

  private Benchmarks() {}

  /** Takes no arguments; the system property {@code rounds} sets their number. */
  public static void main(String[] args) throws RunnerException, IOException {
    Map<String, List<Double>> leasts = new LinkedHashMap<>();
    for (int round = 0; round < ROUNDS; round++) {
      for (RunResult result : round()) {
        String name = result.getPrimaryResult().getLabel();
        double least = result.getPrimaryResult().getStatistics().getMin();
        leasts.computeIfAbsent(name, n -> new ArrayList<>()).add(least);
      }
    }
    System.out.printf(
        "benchmark; least ms; ratio to its reference (%s), median of %d rounds; lowest; highest%n",
        String.join(", ", new TreeSet<>(REFERENCES.values())), ROUNDS);
    leasts.forEach(
        (name, values) ->
            print(name, values, leasts.get(REFERENCES.getOrDefault(name, "transformsAlone"))));
    ThousandCertificates.main(args);
  }

  private static Collection<RunResult> round() throws RunnerException {
    Options options =
        new OptionsBuilder()
            .include(PairBenchmark.class.getName())
            .include(BatchBenchmark.class.getName())
            .include(TrialBenchmark.class.getName())
            .include(CertificateBenchmark.class.getName())
            .forks(1)
            .warmupIterations(3)
            .warmupTime(TimeValue.seconds(1))
            .measurementIterations(3)
            .measurementTime(TimeValue.seconds(1))
            .verbosity(VerboseMode.SILENT)
            .build();
    return new Runner(options).run();
  }

  private static void print(String name, List<Double> values, List<Double> reference) {
    List<Double> ratios = new ArrayList<>();
    for (int round = 0; round < values.size(); round++) {
      ratios.add(values.get(round) / reference.get(round));
    }
    System.out.printf(
        Locale.ROOT,
        "%s; %.3f; %.2f; %.2f; %.2f%n",
        name,
        values.stream().min(Double::compare).orElseThrow(),
        median(ratios),
        ratios.stream().min(Double::compare).orElseThrow(),
        ratios.stream().max(Double::compare).orElseThrow());
  }

  private static double median(List<Double> values) {
    List<Double> sorted = values.stream().sorted().toList();
    int half = sorted.size() / 2;
    return sorted.size() % 2 == 1
        ? sorted.get(half)
        : (sorted.get(half - 1) + sorted.get(half)) / 2;
  }
}
