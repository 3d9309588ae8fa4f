package evenpair.batches;

import evenpair.acoustics.Grid;
import evenpair.batches.StatisticsJson.About;
import evenpair.batches.StatisticsJson.Component;
import evenpair.batches.StatisticsJson.Components;
import evenpair.batches.StatisticsJson.ScoredUnit;
import evenpair.batches.StatisticsJson.TSquared;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.inspections.Inspections.RegionSpan;
import evenpair.statistics.Finding.Lack;
import evenpair.statistics.Finding.NotEnough;
import evenpair.statistics.PrincipalComponents;
import evenpair.statistics.TSquaredLimit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * How the curves of a batch vary together: principal components of left and right deviation side by
 * side, from the units that passed, and Hotelling's T² of every unit on the first of them. Every
 * second grid point is taken: judged curves are smoothed over more than that.
 */
final class ComponentFigures {
  /** Fewer rows leave directions that chance has drawn. Common practice, no source. */
  static final int LEAST_UNITS = 20;

  /** The tail of ± 3 standard deviations, as on the other charts. */
  static final double ALPHA = 0.0027;

  static final int MOST_COMPONENTS = 5;
  private static final double SHARE = 0.9;

  /** Even choice of rows for the decomposition; every unit gets its T² all the same. */
  private static final int MOST_ROWS = 2000;

  private static final int STEP = 2;

  private final StatisticsWords words;
  private final FirstPass units;
  private final List<RegionSpan> regions;
  private final About about;

  ComponentFigures(StatisticsWords words, FirstPass units, List<RegionSpan> regions, About about) {
    this.words = words;
    this.units = units;
    this.regions = regions;
    this.about = about;
  }

  /**
   * @param baseline how many units, from the first, the components are found from; of them those
   *     that passed
   */
  Components of(int baseline) {
    int[] points = points();
    int[] rows =
        IntStream.range(0, units.drawn().size()).filter(row -> whole(row, points)).toArray();
    int[] members =
        Arrays.stream(rows)
            .filter(row -> row < baseline && "PASS".equals(units.drawn().get(row).verdict()))
            .toArray();
    if (members.length < LEAST_UNITS || points.length == 0) {
      return without(new NotEnough<>(Lack.UNITS, members.length, LEAST_UNITS));
    }
    double[][] table =
        IntStream.range(0, Math.min(MOST_ROWS, members.length))
            .mapToObj(i -> row(members[evenly(i, members.length)], points))
            .toArray(double[][]::new);
    PrincipalComponents found = PrincipalComponents.ofCovariance(table);
    if (found.variances().length == 0) {
      return without(new NotEnough<>(Lack.SPREAD, 1, 2));
    }
    int count = count(found);
    TSquared limits =
        new TSquared(
            count,
            ALPHA,
            Rounded.of(TSquaredLimit.ofMember(table.length, count, ALPHA)),
            Rounded.of(TSquaredLimit.ofAnother(table.length, count, ALPHA)));
    double[] hz = Arrays.stream(points).mapToDouble(Grid::hz).toArray();
    return new Components(
        about,
        members.length,
        hz,
        IntStream.range(0, count).mapToObj(k -> component(found, k, points)).toList(),
        limits,
        scored(found, count, limits, points, rows, members),
        words.text(
            "components.method",
            Map.of("from", members.length, "components", count, "n", rows.length)),
        notes(rows.length, members.length),
        null);
  }

  /** More than chance would draw, and no more than holds most of the variance. */
  private static int count(PrincipalComponents found) {
    int telling = Math.min(found.componentsAboveBrokenStick(), found.componentsFor(SHARE));
    return Math.max(1, Math.min(MOST_COMPONENTS, telling));
  }

  private static int evenly(int i, int all) {
    int chosen = Math.min(MOST_ROWS, all);
    return chosen == 1 ? 0 : (int) ((long) i * (all - 1) / (chosen - 1));
  }

  private List<String> notes(int whole, int members) {
    List<String> notes = new ArrayList<>();
    int lacking = units.drawn().size() - whole;
    if (lacking > 0) {
      notes.add(words.text("components.note.lacking", Map.of("count", lacking)));
    }
    if (members > MOST_ROWS) {
      notes.add(words.text("components.note.chosen", Map.of("rows", MOST_ROWS)));
    }
    return notes;
  }

  private Components without(NotEnough<?> lack) {
    return new Components(
        about,
        lack.have(),
        new double[0],
        List.of(),
        null,
        List.of(),
        words.text("components.method-none"),
        List.of(),
        CapabilityFigures.missing(words, lack));
  }

  /** Grid points inside a region that most units have. */
  private int[] points() {
    int rows = units.drawn().size();
    return IntStream.iterate(0, i -> i < Grid.POINTS, i -> i + STEP)
        .filter(this::judged)
        .filter(point -> IntStream.range(0, rows).filter(row -> has(row, point)).count() * 2 > rows)
        .toArray();
  }

  private boolean judged(int point) {
    double hz = Grid.label(point);
    return regions.stream().anyMatch(region -> hz >= region.fromHz() && hz <= region.toHz());
  }

  private boolean has(int row, int point) {
    int at = row * Grid.POINTS + point;
    return Float.isFinite(units.leftDeviation()[at]) && Float.isFinite(units.rightDeviation()[at]);
  }

  private boolean whole(int row, int[] points) {
    return Arrays.stream(points).allMatch(point -> has(row, point));
  }

  private double[] row(int row, int[] points) {
    double[] values = new double[2 * points.length];
    for (int i = 0; i < points.length; i++) {
      int at = row * Grid.POINTS + points[i];
      values[i] = units.leftDeviation()[at];
      values[points.length + i] = units.rightDeviation()[at];
    }
    return values;
  }

  private Component component(PrincipalComponents found, int k, int[] points) {
    double all = Arrays.stream(found.variances()).sum();
    double sd = Math.sqrt(found.variances()[k]);
    double[] curve = Arrays.stream(found.vector(k)).map(value -> sd * value).toArray();
    int strongest = 0;
    for (int i = 1; i < curve.length; i++) {
      strongest = Math.abs(curve[i]) > Math.abs(curve[strongest]) ? i : strongest;
    }
    int point = points[strongest % points.length];
    String text =
        words.text(
            "components.strongest",
            Map.of(
                "side", words.text(strongest < points.length ? "side.left" : "side.right"),
                "region", regionOf(point),
                "frequency", Grid.label(point),
                "change", StatisticsWords.signed(curve[strongest])));
    return new Component(
        found.variances()[k] / all,
        Rounded.of(Arrays.copyOf(curve, points.length)),
        Rounded.of(Arrays.copyOfRange(curve, points.length, curve.length)),
        text);
  }

  private String regionOf(int point) {
    double hz = Grid.label(point);
    return regions.stream()
        .filter(region -> hz >= region.fromHz() && hz <= region.toHz())
        .findFirst()
        .map(RegionSpan::name)
        .orElseThrow();
  }

  private List<ScoredUnit> scored(
      PrincipalComponents found,
      int count,
      TSquared limits,
      int[] points,
      int[] rows,
      int[] members) {
    boolean[] member = new boolean[units.drawn().size()];
    Arrays.stream(members).forEach(row -> member[row] = true);
    double[] variances = found.variances();
    double[] mean = found.mean();
    List<ScoredUnit> scored = new ArrayList<>();
    for (int row : rows) {
      double[] values = row(row, points);
      double[] scores = found.scores(values, count);
      double rest = 0;
      for (int i = 0; i < values.length; i++) {
        rest += (values[i] - mean[i]) * (values[i] - mean[i]);
      }
      double sum = 0;
      int most = 0;
      for (int k = 0; k < count; k++) {
        rest -= scores[k] * scores[k];
        scores[k] /= Math.sqrt(variances[k]);
        sum += scores[k] * scores[k];
        most = Math.abs(scores[k]) > Math.abs(scores[most]) ? k : most;
      }
      BatchUnit unit = units.drawn().get(row);
      double limit = member[row] ? limits.memberLimit() : limits.otherLimit();
      scored.add(
          new ScoredUnit(
              unit.inspection(),
              unit.serial(),
              unit.verdict(),
              unit.at(),
              member[row],
              Rounded.of(sum),
              sum > limit,
              Rounded.of(scores),
              Rounded.of(Math.sqrt(Math.max(0, rest) / values.length)),
              most,
              sum > 0 ? Rounded.orNull(scores[most] * scores[most] / sum) : null));
    }
    return scored;
  }
}
