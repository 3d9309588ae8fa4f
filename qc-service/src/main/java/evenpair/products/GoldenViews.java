package evenpair.products;

import com.fasterxml.jackson.annotation.JsonInclude;
import evenpair.acoustics.Grid;
import evenpair.acoustics.TuningFilters;
import evenpair.products.Expectation.Deviation;
import evenpair.products.Products.Provenance;
import evenpair.products.VersionRows.Golden;
import evenpair.products.VersionRows.Limits;
import evenpair.products.VersionRows.SignOff;
import evenpair.web.Texts;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;

/** Golden responses as JSON carries them. */
@Component
class GoldenViews {
  private final VersionViews views;
  private final Texts texts;
  private final Clock clock;

  GoldenViews(VersionViews views, Texts texts, Clock clock) {
    this.views = views;
    this.texts = texts;
    this.clock = clock;
  }

  /** How far a derived tuning's golden response lies from what its filters let expect. */
  record ExpectationView(
      @Schema(example = "plain", description = "the tuning that this one is derived from")
          String from,
      @Schema(example = "1", description = "that one's active golden response") int fromVersion,
      @Schema(
              example = "0.12",
              description = "stated less expected where it is largest, dB, unsmoothed")
          double deviationDb,
      @Schema(example = "7943.28") double atHz,
      @Schema(example = "0.5", description = "a larger deviation gets a notice, dB")
          double noticeAboveDb) {}

  /**
   * @param spreadDb left out of lists; null at a point without a value
   */
  record BuiltFrom(
      @Schema(example = "40") int units,
      List<UUID> inspections,
      List<UUID> leftOut,
      @JsonInclude(JsonInclude.Include.NON_NULL) Double[] spreadDb) {}

  /** One version of a golden response; the curve is left out of lists. */
  @JsonInclude(JsonInclude.Include.ALWAYS)
  record GoldenView(
      @Schema(example = "sedge-2") String product,
      @Schema(example = "plain") String tuning,
      @Schema(example = "1") int version,
      @Schema(example = "plain-golden.csv") String name,
      @Schema(
              example = "approved",
              allowableValues = {"draft", "approved"})
          String state,
      @Schema(description = "whether new limit sets mean it by its name") boolean active,
      Instant activeFrom,
      @Schema(description = "versions of limit sets that refer to it") List<Integer> limitSets,
      String digest,
      @Schema(
              example = "file",
              allowableValues = {"file", "person"})
          String origin,
      String author,
      Instant madeAt,
      @Schema(
              example = "file",
              allowableValues = {"file", "person"})
          String approvedBy,
      String approver,
      String approvalReason,
      Instant approvedAt,
      @Schema(description = "null if the tuning is derived from no other")
          ExpectationView expectation,
      @Schema(
              description =
                  "what an engineer should look at before signing: far from the expectation; null"
                      + " if there is nothing")
          String notice,
      @Schema(description = "what it was built from; null if it came as a curve") BuiltFrom built,
      @JsonInclude(JsonInclude.Include.NON_NULL) double[] frequencyHz,
      @JsonInclude(JsonInclude.Include.NON_NULL) double[] levelDb,
      @JsonInclude(JsonInclude.Include.NON_NULL) double[] phaseDeg) {}

  record FilterView(
      @Schema(
              example = "low-shelf",
              allowableValues = {"low-shelf", "high-shelf", "peak"})
          String kind,
      @Schema(example = "105") double hz,
      @Schema(example = "4") double gainDb,
      @Schema(example = "0.71") double q) {}

  /** What the signal processor of a derived tuning does. */
  record ProcessingView(
      List<FilterView> filters,
      @Schema(example = "-2", description = "overall gain, dB") double gainDb,
      @Schema(example = "48000", description = "null without filters") Double sampleRateHz) {
    static ProcessingView of(TuningFilters processing) {
      List<FilterView> filters =
          processing.filters().stream()
              .map(f -> new FilterView(f.kind().word(), f.hz(), f.gainDb(), f.q()))
              .toList();
      Double rateHz = filters.isEmpty() ? null : processing.rateHz();
      return new ProcessingView(filters, processing.gainDb(), rateHz);
    }
  }

  /** What a derived tuning's golden response should be. */
  @JsonInclude(JsonInclude.Include.ALWAYS)
  record ExpectedView(
      @Schema(example = "sedge-2") String product,
      @Schema(example = "warm") String tuning,
      @Schema(example = "plain") String from,
      @Schema(example = "1", description = "that one's active golden response") int fromVersion,
      ProcessingView processing,
      double[] frequencyHz,
      @Schema(
              description =
                  "gain of all filters and the overall gain, dB, power mean over each grid band")
          double[] gainDb,
      @Schema(description = "the golden response of \"from\" plus that gain, dB SPL")
          double[] levelDb,
      @Schema(
              description =
                  "degrees, relative to the arrival of \"from\"; null if that one has no phase")
          double[] phaseDeg) {}

  ExpectedView view(String product, String tuning, Expectation expectation) {
    return new ExpectedView(
        product,
        tuning,
        expectation.from(),
        expectation.base().version(),
        ProcessingView.of(expectation.processing()),
        Grid.frequencies(),
        expectation.processing().gains().toArray(),
        expectation.response().level().toArray(),
        expectation.response().phaseDeg().orElse(null));
  }

  /**
   * @return the rows as a list shows them, without curves; all of one tuning
   */
  List<GoldenView> list(
      Snapshot known, String product, String tuning, Stream<Golden> rows, Locale locale) {
    // worked out once: a gain curve is an integral at each of 241 points
    Optional<Expectation> expected = Expectation.of(known, product, tuning, clock.instant());
    return rows.map(row -> view(known, row, expected, false, locale)).toList();
  }

  GoldenView view(Snapshot known, Golden row, Locale locale) {
    Optional<Expectation> expected =
        Expectation.of(known, row.product(), row.tuning(), clock.instant());
    return view(known, row, expected, true, locale);
  }

  private GoldenView view(
      Snapshot known, Golden row, Optional<Expectation> expected, boolean whole, Locale locale) {
    Optional<Deviant> deviant = expected.map(e -> new Deviant(e, e.deviation(row.response())));
    SignOff signOff = row.signOff();
    boolean active =
        signOff != null
            && known
                .golden(row.product(), row.tuning(), row.name(), clock.instant())
                .filter(row::equals)
                .isPresent();
    List<Integer> limitSets =
        known.limitSets(row.product(), row.tuning()).stream()
            .filter(limits -> limits.goldenId().equals(row.id()))
            .map(Limits::version)
            .toList();
    return new GoldenView(
        row.product(),
        row.tuning(),
        row.version(),
        row.name(),
        VersionViews.state(signOff),
        active,
        known.activeFrom(row.id()).orElse(null),
        limitSets,
        row.digest(),
        VersionViews.origin(row.author()),
        views.name(row.author()),
        row.madeAt(),
        signOff == null ? null : VersionViews.origin(signOff.approver()),
        signOff == null ? null : views.name(signOff.approver()),
        signOff == null ? null : signOff.reason(),
        signOff == null ? null : signOff.at(),
        deviant.map(Deviant::view).orElse(null),
        deviant.filter(d -> d.deviation().notable()).map(d -> notice(d, locale)).orElse(null),
        builtFrom(row.provenance(), whole),
        whole ? Grid.frequencies() : null,
        whole ? row.response().level().toArray() : null,
        whole ? row.response().phaseDeg().orElse(null) : null);
  }

  private record Deviant(Expectation expectation, Deviation deviation) {
    ExpectationView view() {
      return new ExpectationView(
          expectation.from(),
          expectation.base().version(),
          deviation.deviationDb(),
          deviation.atHz(),
          Expectation.NOTICE_ABOVE_DB);
    }
  }

  private String notice(Deviant deviant, Locale locale) {
    double db = deviant.deviation().deviationDb();
    return texts.render(
        locale,
        db > 0 ? "notice.golden-expectation.above" : "notice.golden-expectation.below",
        Map.of(
            "excess",
            Math.abs(db),
            "frequency",
            Grid.label(Grid.nearest(deviant.deviation().atHz())),
            "from",
            deviant.expectation().from()));
  }

  private static BuiltFrom builtFrom(Provenance provenance, boolean whole) {
    return provenance == null
        ? null
        : new BuiltFrom(
            provenance.units(),
            provenance.inspections(),
            provenance.leftOut(),
            whole ? presentValues(provenance) : null);
  }

  private static Double[] presentValues(Provenance provenance) {
    Double[] values = new Double[Grid.POINTS];
    for (int i = 0; i < values.length; i++) {
      values[i] = provenance.spreadDb().has(i) ? provenance.spreadDb().at(i) : null;
    }
    return values;
  }
}
