package evenpair.stations;

import evenpair.access.People;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.products.Products;
import evenpair.products.Products.StoredLimitSet;
import evenpair.stations.GaugeStudyRow.AppraiserKind;
import evenpair.tolerance.Region;
import evenpair.web.Refusal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Says how far gauge studies are and what they and the budgets made from them say. */
@Component
@Transactional(readOnly = true)
class GaugeDescriber {
  private static final String BUDGET_METHOD =
      "u² = u_repeat²/n + u_reproducibility² + u_calibrator² (level only) + u_correction² (match and balance only);"
          + " expanded with k = 2.";

  private final StationRegister register;
  private final GaugeStudyRows studies;
  private final GaugeCaptureRows captures;
  private final Budgets budgets;
  private final Products products;
  private final People people;
  private final TrustSettings settings;

  GaugeDescriber(
      StationRegister register,
      GaugeStudyRows studies,
      GaugeCaptureRows captures,
      Budgets budgets,
      Products products,
      People people,
      TrustSettings settings) {
    this.register = register;
    this.studies = studies;
    this.captures = captures;
    this.budgets = budgets;
    this.products = products;
    this.people = people;
    this.settings = settings;
  }

  /**
   * @return with its analysis by the limit set that is active now, if it is complete
   */
  GaugeViews.Study describe(GaugeStudyRow study, Instant now) {
    return view(study, now, true);
  }

  GaugeViews.Studies list(StationRow station, Instant now) {
    return new GaugeViews.Studies(
        studies.ofStation(station.id()).stream().map(study -> view(study, now, false)).toList());
  }

  private GaugeViews.Study view(GaugeStudyRow study, Instant now, boolean analysed) {
    Set<GaugePlace> measured = new HashSet<>(captures.places(study.getId()));
    boolean complete = measured.size() == study.wanted();
    List<String> names = appraisers(study);
    return new GaugeViews.Study(
        study.getId(),
        register.name(study.stationId()),
        study.product(),
        study.tuning(),
        study.appraiserKind().word(),
        study.parts(),
        names,
        study.seatings(),
        study.plannedAt(),
        complete ? "complete" : "collecting",
        measured.size(),
        study.wanted(),
        missing(study, names, measured),
        complete ? budgets.validUntil(captures.newestMeasuredAt(study.getId())) : null,
        complete && analysed ? analysis(study, now).orElse(null) : null);
  }

  private List<String> appraisers(GaugeStudyRow study) {
    List<String> names = new ArrayList<>();
    for (UUID appraiser : study.appraisers()) {
      String place = "#" + (names.size() + 1);
      names.add(
          study.appraiserKind() == AppraiserKind.STATION
              ? register.name(appraiser)
              : people.nameOf(appraiser).orElse(place));
    }
    return names;
  }

  private static List<GaugeViews.Place> missing(
      GaugeStudyRow study, List<String> names, Set<GaugePlace> measured) {
    List<GaugeViews.Place> missing = new ArrayList<>();
    for (int part = 0; part < study.parts().size(); part++) {
      for (int appraiser = 0; appraiser < names.size(); appraiser++) {
        for (int seating = 1; seating <= study.seatings(); seating++) {
          if (!measured.contains(new GaugePlace(part, appraiser, seating))) {
            missing.add(
                new GaugeViews.Place(study.parts().get(part), names.get(appraiser), seating));
          }
        }
      }
    }
    return missing;
  }

  private Optional<GaugeViews.Analysis> analysis(GaugeStudyRow study, Instant now) {
    return products
        .activeAt(study.product(), study.tuning(), now)
        .map(
            set ->
                GaugeNumbers.view(
                    budgets.analysis(study, set), set.set(), settings.poolInteractionAbove()));
  }

  /**
   * @param seatings how many are combined; null for as many as the active limit set wants
   * @throws Refusal 409 saying what is missing for a budget
   */
  GaugeViews.Budget budget(StationRow station, StoredLimitSet set, Integer seatings, Instant now) {
    String product = set.set().product();
    String tuning = set.set().tuning();
    UncertaintyBudget budget =
        budgets
            .at(station, product, tuning, now)
            .orElseThrow(() -> noBudget(station, product, tuning, now));
    int n = seatings == null ? set.set().seating().count() : seatings;
    GaugeViews.BudgetCurve deviation = curve(budget.deviation(), n);
    GaugeViews.BudgetCurve match = curve(budget.match(), n);
    return new GaugeViews.Budget(
        station.name(),
        product,
        tuning,
        budget.study(),
        budget.studiedAt(),
        budget.validUntil(),
        n,
        BUDGET_METHOD,
        set.set().regions().stream()
            .map(region -> region(region, deviation.expandedDb(), match.expandedDb()))
            .toList(),
        number(budget.offset(), n),
        number(budget.balance(), n),
        Grid.frequencies(),
        deviation,
        match);
  }

  private Refusal noBudget(StationRow station, String product, String tuning, Instant now) {
    boolean studied = budgets.study(station, product, tuning, now).isPresent();
    String why =
        studied
            ? "a microphone's calibration or the left/right correction does not hold now, or the study's curves do not cover the"
                + " alignment band"
            : "there is no complete gauge study of '"
                + product
                + "' in tuning '"
                + tuning
                + "' that holds now";
    return new Refusal(
        409,
        "no-budget",
        "Station '" + station.name() + "' has no uncertainty budget: " + why + ".");
  }

  private static GaugeViews.BudgetCurve curve(UncertaintyBudget.ByFrequency sources, int n) {
    Curve combined = sources.combined(n);
    return new GaugeViews.BudgetCurve(
        sources.repeat().toArray(),
        sources.reproducibility().toArray(),
        sources.correction().toArray(),
        combined.toArray(),
        combined.times(2).toArray());
  }

  private static GaugeViews.BudgetNumber number(UncertaintyBudget.Scalar sources, int n) {
    double combined = sources.combined(n);
    return new GaugeViews.BudgetNumber(
        sources.repeat(),
        sources.reproducibility(),
        sources.calibrator(),
        sources.correction(),
        combined,
        2 * combined);
  }

  private static GaugeViews.BudgetRegion region(Region region, double[] deviation, double[] match) {
    int d = largest(region, deviation);
    int m = largest(region, match);
    return new GaugeViews.BudgetRegion(
        region.name(),
        d < 0 ? null : deviation[d],
        d < 0 ? null : Grid.hz(d),
        m < 0 ? null : match[m],
        m < 0 ? null : Grid.hz(m));
  }

  /** Where in the region it is largest; −1 if no point has one. */
  private static int largest(Region region, double[] values) {
    return IntStream.rangeClosed(region.band().firstIndex(), region.band().lastIndex())
        .filter(i -> !Double.isNaN(values[i]))
        .reduce((a, b) -> values[b] > values[a] ? b : a)
        .orElse(-1);
  }
}
