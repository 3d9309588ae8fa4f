package evenpair.inspections;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Smoothing;
import evenpair.inspections.Inspections.JudgedCurves;
import evenpair.inspections.Inspections.RegionSpan;
import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.Judgement;
import evenpair.tolerance.MeasuredDistortion;
import evenpair.tolerance.MeasuredPair;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;

/**
 * The curves of an inspection beside their golden response and limits. To be called in a
 * transaction.
 */
@Component
class CurveDesk {
  private final InspectionFiles files;

  CurveDesk(InspectionFiles files) {
    this.files = files;
  }

  /**
   * @param judged true: smoothed as judged; false: as stored
   * @return empty if no attempt was valid
   */
  Optional<Drawn> of(InspectionRow row, boolean judged) {
    List<StoredPair> seatings = files.validSeatings(row.id());
    if (seatings.isEmpty()) {
      return Optional.empty();
    }
    MeasuredPair mean = Combination.of(seatings);
    return Optional.of(
        new Drawn(
            curves(seatings, files.judging(row), judged),
            mean.left().distortion(),
            mean.right().distortion()));
  }

  /**
   * @param left distortion; empty for a finished curve
   */
  record Drawn(
      JudgedCurves curves, Optional<MeasuredDistortion> left, Optional<MeasuredDistortion> right) {}

  private static JudgedCurves curves(List<StoredPair> seatings, Judging judging, boolean judged) {
    StoredLimitSet limits = judging.limits();
    Smoothing smoothing = judged ? limits.set().smoothing() : Smoothing.NONE;
    MeasuredPair mean = Combination.of(seatings);
    Curve left = smoothing.apply(mean.left().level());
    Curve right = smoothing.apply(mean.right().level());
    Curve golden = smoothing.apply(limits.golden().level());
    Judgement judgement = judging.judge(seatings);
    LimitLines lines = LimitLines.of(limits.set().regions());
    Band specified = limits.set().earSimulator().specifiedRange();
    return new JudgedCurves(
        Grid.frequencies(),
        left.toArray(),
        right.toArray(),
        golden.toArray(),
        lines.lower().plus(golden).toArray(),
        lines.upper().plus(golden).toArray(),
        left.minus(right).toArray(),
        lines.match().toArray(),
        orNaN(judgement.leftLevelDb()),
        orNaN(judgement.rightLevelDb()),
        spans(limits),
        smoothing.label(),
        specified.fromHz(),
        specified.toHz());
  }

  static List<RegionSpan> spans(StoredLimitSet limits) {
    return limits.set().regions().stream()
        .map(region -> new RegionSpan(region.name(), region.band().fromHz(), region.band().toHz()))
        .toList();
  }

  private static double orNaN(Double value) {
    return value == null ? Double.NaN : value;
  }
}
