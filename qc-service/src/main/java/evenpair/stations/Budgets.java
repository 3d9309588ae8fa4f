package evenpair.stations;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.products.Products;
import evenpair.products.Products.StoredLimitSet;
import evenpair.stations.StationRegister.Newest;
import evenpair.stations.UncertaintyBudget.ByFrequency;
import evenpair.stations.UncertaintyBudget.Scalar;
import evenpair.statistics.GaugeResult;
import evenpair.statistics.GaugeStudy;
import evenpair.tolerance.Channel;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.ToDoubleFunction;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Works out a station's uncertainty budgets from gauge studies, calibrators and corrections. */
@Service
@Transactional(readOnly = true)
class Budgets {
  private static final int KEPT_ANALYSES = 32;

  private final StationRegister register;
  private final GaugeStudyRows studies;
  private final GaugeCaptureRows captures;
  private final Products products;
  private final TrustSettings settings;
  private final Map<Key, GaugeAnalysis> analyses =
      Collections.synchronizedMap(
          new LinkedHashMap<>(16, 0.75f, true) {
            @Override
            protected boolean removeEldestEntry(Map.Entry<Key, GaugeAnalysis> eldest) {
              return size() > KEPT_ANALYSES;
            }
          });

  /** A complete study never changes, nor does a limit set. */
  private record Key(UUID study, UUID limitSet) {}

  Budgets(
      StationRegister register,
      GaugeStudyRows studies,
      GaugeCaptureRows captures,
      Products products,
      TrustSettings settings) {
    this.register = register;
    this.studies = studies;
    this.captures = captures;
    this.products = products;
    this.settings = settings;
  }

  /**
   * @return empty without an active limit set, a complete study, a correction or calibrations that
   *     hold at that instant
   */
  Optional<UncertaintyBudget> at(StationRow station, String product, String tuning, Instant at) {
    Newest newest = register.newest(station, at);
    if (!holds(newest, at)) {
      return Optional.empty();
    }
    return products
        .activeAt(product, tuning, at)
        .flatMap(
            set ->
                study(station, product, tuning, at).flatMap(study -> budget(study, set, newest)));
  }

  /**
   * @return by region; empty without an active limit set, a complete study or a correction that
   *     holds at that instant
   */
  Map<String, Scalar> differenceOfRegions(
      StationRow station, String product, String tuning, Instant at) {
    Newest newest = register.newest(station, at);
    Optional<StoredLimitSet> set = products.activeAt(product, tuning, at);
    Optional<GaugeStudyRow> study = study(station, product, tuning, at);
    if (!holds(newest, at) || set.isEmpty() || study.isEmpty()) {
      return Map.of();
    }
    Curve correction = newest.correction().orElseThrow().toCorrection().uncertainty();
    Map<String, Scalar> regions = new LinkedHashMap<>();
    for (GaugeAnalysis.RegionMeans means : analysis(study.get(), set.get()).regions()) {
      if (means.quantity().equals("left-right")
          && means.result().isPresent()
          && correction.covers(means.region().band())) {
        regions.put(
            means.region().name(),
            balance(means.result().get(), correction.mean(means.region().band())));
      }
    }
    return regions;
  }

  /**
   * @return the newest study of that tuning that was complete and held at that instant
   */
  Optional<GaugeStudyRow> study(StationRow station, String product, String tuning, Instant at) {
    return studies.ofTuning(station.id(), product, tuning, at).stream()
        .filter(study -> complete(study))
        .filter(
            study -> {
              Instant measured = captures.newestMeasuredAt(study.getId());
              return !measured.isAfter(at) && at.isBefore(validUntil(measured));
            })
        .findFirst();
  }

  boolean complete(GaugeStudyRow study) {
    return captures.count(study.getId()) == study.wanted();
  }

  Instant validUntil(Instant measured) {
    return measured.plus(settings.gaugeStudyValid());
  }

  /**
   * @param study a complete one
   */
  GaugeAnalysis analysis(GaugeStudyRow study, StoredLimitSet set) {
    Key key = new Key(study.getId(), set.id());
    GaugeAnalysis known = analyses.get(key);
    if (known != null) {
      return known;
    }
    GaugeStudy design =
        new GaugeStudy(study.parts().size(), study.appraisers().size(), study.seatings());
    List<MeasuredSides> measured =
        captures.all(study.getId()).stream().map(GaugeCaptureRow::measured).toList();
    GaugeAnalysis analysis =
        GaugeAnalysis.of(
            design, measured, set.set(), set.golden(), settings.poolInteractionAbove());
    analyses.put(key, analysis);
    return analysis;
  }

  private static boolean holds(Newest newest, Instant at) {
    for (Channel channel : Channel.values()) {
      MicrophoneCalibrationRow row = newest.microphones().get(channel);
      if (row == null || !row.validAt(at)) {
        return false;
      }
    }
    return newest.correction().filter(row -> row.validAt(at)).isPresent();
  }

  private Optional<UncertaintyBudget> budget(
      GaugeStudyRow study, StoredLimitSet set, Newest newest) {
    GaugeAnalysis analysis = analysis(study, set);
    if (analysis.offset().size() < Channel.values().length || analysis.balance().isEmpty()) {
      return Optional.empty();
    }
    Instant studiedAt = captures.newestMeasuredAt(study.getId());
    Curve correction = newest.correction().orElseThrow().toCorrection().uncertainty();
    return Optional.of(
        new UncertaintyBudget(
            study.getId(),
            studiedAt,
            validUntil(studiedAt),
            byFrequency(analysis.deviation().values(), Curve.of(new double[Grid.POINTS])),
            byFrequency(List.<GaugeResult[]>of(analysis.match()), correction),
            offset(analysis.offset().values(), newest),
            balance(analysis.balance().get(), correction.mean(set.set().level().band()))));
  }

  private static ByFrequency byFrequency(Collection<GaugeResult[]> results, Curve correction) {
    return new ByFrequency(
        largest(results, GaugeResult::ev),
        largest(results, GaugeResult::reproducibility),
        correction);
  }

  /** Point by point the largest one; absent where one of them is. */
  private static Curve largest(
      Collection<GaugeResult[]> results, ToDoubleFunction<GaugeResult> component) {
    double[] largest = new double[Grid.POINTS];
    for (GaugeResult[] byPoint : results) {
      for (int i = 0; i < largest.length; i++) {
        double here = byPoint[i] == null ? Double.NaN : component.applyAsDouble(byPoint[i]);
        largest[i] = Math.max(largest[i], here); // NaN if either is
      }
    }
    return Curve.of(largest);
  }

  private Scalar offset(Collection<GaugeResult> channels, Newest newest) {
    double expanded =
        Arrays.stream(Channel.values())
            .map(channel -> newest.microphones().get(channel).stated().calibratorUncertaintyDb())
            .mapToDouble(stated -> stated == null ? settings.calibratorUncertaintyDb() : stated)
            .max()
            .orElseThrow();
    return new Scalar(
        channels.stream().mapToDouble(GaugeResult::ev).max().orElseThrow(),
        channels.stream().mapToDouble(GaugeResult::reproducibility).max().orElseThrow(),
        expanded / 2, // stated with k = 2
        0);
  }

  private static Scalar balance(GaugeResult result, double correction) {
    return new Scalar(result.ev(), result.reproducibility(), 0, correction);
  }
}
