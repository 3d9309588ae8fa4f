package evenpair.batches;

import evenpair.acoustics.Grid;
import evenpair.batches.GoldenJson.Earpiece;
import evenpair.batches.GoldenJson.Unit;
import evenpair.batches.OddCurves.Distance;
import evenpair.batches.OddCurves.Finding;
import evenpair.batches.OddCurves.Shape;
import evenpair.inspections.MeasuredCurves.MeasuredUnit;
import evenpair.tolerance.Channel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * The units behind a golden response, each with how far it lies from it.
 *
 * @param rows the odd ones first, the farthest of them on top; then in production order
 * @param notes what cannot be said, and why
 */
record GoldenMembers(List<Unit> rows, List<String> notes) {
  /** Robust spreads of fewer are themselves a guess. Common practice, no source. */
  private static final int ENOUGH_UNITS = 10;

  static GoldenMembers of(
      List<MeasuredUnit> kept, List<MeasuredUnit> others, GoldenPool pool, GoldenWords words) {
    double[][] levels = GoldenPool.levels(GoldenPool.curves(kept));
    List<Finding> findings =
        new OddCurves(levels).examine(GoldenPool.levels(GoldenPool.curves(others)));
    List<MeasuredUnit> all = Stream.concat(kept.stream(), others.stream()).toList();
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      rows.add(new Row(all.get(i), i >= kept.size(), findings.get(2 * i), findings.get(2 * i + 1)));
    }
    List<Unit> units =
        rows.stream()
            .sorted(Comparator.comparing(Row::odd).thenComparing(Row::distance).reversed())
            .map(row -> row.unit(pool, words))
            .toList();
    return new GoldenMembers(units, notes(rows, pool, words));
  }

  private static List<String> notes(List<Row> rows, GoldenPool pool, GoldenWords words) {
    List<String> notes = new ArrayList<>();
    int kept = (int) rows.stream().filter(row -> !row.leftOut()).count();
    if (kept < ENOUGH_UNITS) {
      notes.add(words.text("note.few-units", Map.of("have", kept, "need", ENOUGH_UNITS)));
    }
    if (rows.stream().allMatch(Row::withoutShape)) {
      notes.add(words.text("note.no-shape", Map.of("need", OddCurves.FEWEST_CURVES)));
    }
    pool.firstGap()
        .ifPresentOrElse(
            gap -> notes.add(words.text("note.gap", Map.of("frequency", Grid.label(gap)))),
            () -> {
              if (Arrays.stream(pool.count()).anyMatch(n -> n < 2 * kept)) {
                notes.add(words.text("note.fewer-curves", Map.of()));
              }
            });
    if (pool.phaseDeg().isEmpty()) {
      notes.add(words.text("note.no-phase", Map.of()));
    } else if (pool.withPhase() < 2 * kept) {
      notes.add(words.text("note.some-phases", Map.of("count", 2 * kept - pool.withPhase())));
    }
    long oddKept = rows.stream().filter(row -> row.odd() && !row.leftOut()).count();
    if (oddKept > 0) {
      notes.add(words.text("note.odd-kept", Map.of("count", oddKept)));
    }
    return notes;
  }

  private record Row(MeasuredUnit unit, boolean leftOut, Finding left, Finding right) {
    boolean odd() {
      return left.odd() || right.odd();
    }

    /** For the order of odd units only; the others stay in theirs. */
    double distance() {
      return odd() ? Math.max(farthest(left), farthest(right)) : 0;
    }

    private static double farthest(Finding finding) {
      Distance distance = finding.distance();
      return Double.isNaN(distance.times()) ? 0 : Math.abs(distance.times()) / distance.limit();
    }

    boolean withoutShape() {
      return Double.isNaN(left.shape().tSquared()) && Double.isNaN(right.shape().tSquared());
    }

    Unit unit(GoldenPool pool, GoldenWords words) {
      List<String> why = new ArrayList<>(words.why(Channel.LEFT, left));
      why.addAll(words.why(Channel.RIGHT, right));
      return new Unit(
          unit.inspection(),
          unit.serial(),
          leftOut,
          odd(),
          why,
          earpiece(left, unit.pair().left().level().toArray(), pool),
          earpiece(right, unit.pair().right().level().toArray(), pool));
    }

    private static Earpiece earpiece(Finding finding, double[] levels, GoldenPool pool) {
      Distance distance = finding.distance();
      Shape shape = finding.shape();
      double[] deviation = new double[levels.length];
      for (int i = 0; i < deviation.length; i++) {
        deviation[i] = levels[i] - pool.levelDb()[i];
      }
      return new Earpiece(
          finding.odd(),
          Rounded.orNull(distance.typical()),
          Rounded.orNull(distance.times()),
          Rounded.orNull(distance.limit()),
          distance.at() < 0 ? null : (Double) Grid.label(distance.at()),
          Rounded.orNull(distance.db()),
          Rounded.orNull(shape.tSquared()),
          Rounded.orNull(shape.limit()),
          Rounded.of(deviation));
    }
  }
}
