package evenpair.traceability;

import evenpair.acoustics.Curve;
import evenpair.inspections.Inspections;
import evenpair.inspections.Inspections.BatchSummary;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.inspections.Inspections.Inspection;
import evenpair.inspections.Inspections.JudgedCurves;
import evenpair.products.Products;
import evenpair.traceability.AcrossJson.Across;
import evenpair.traceability.AcrossJson.Measure;
import evenpair.traceability.AcrossJson.Near;
import evenpair.traceability.AcrossJson.Point;
import evenpair.traceability.Dispatches.Shipped;
import evenpair.traceability.Population.Member;
import evenpair.traceability.RegionMeasures.What;
import evenpair.web.Refusal;
import evenpair.web.Texts;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.springframework.stereotype.Component;

/** Sets one unit beside all units of its product in its tuning. */
@Component
class AcrossDesk {
  /** Units that are compared at most; the batches nearest in time count first. */
  static final int MOST_UNITS = 20_000;

  /** Among fewer nobody can be told apart. Common practice, no source. */
  private static final int ENOUGH = 10;

  private final Inspections inspections;
  private final Products products;
  private final Dispatches dispatches;
  private final Texts texts;

  AcrossDesk(Inspections inspections, Products products, Dispatches dispatches, Texts texts) {
    this.inspections = inspections;
    this.products = products;
    this.dispatches = dispatches;
    this.texts = texts;
  }

  /**
   * @param tuning null: the one of its newest inspection with curves
   * @param alike how many units to name in each list
   * @throws Refusal 404 for an unknown serial or tuning, 409 for a unit without curves
   */
  Across of(String serial, String tuning, int alike, Locale locale) {
    Inspection asked = asked(serial, tuning);
    JudgedCurves curves = inspections.curves(asked.id()).orElseThrow();
    RegionMeasures measures =
        new RegionMeasures(curves, products.limitSet(asked.limitSetId()).set().level().band());
    List<BatchSummary> batches = batches(asked);
    Population population = population(asked, curves, measures, batches);
    int read = (int) batches.stream().mapToInt(BatchSummary::units).sum();
    return across(asked, measures, population, read, alike, locale);
  }

  private Inspection asked(String serial, String tuning) {
    List<Inspection> all = inspections.ofUnit(serial);
    if (all.isEmpty()) {
      throw new Refusal(404, "unknown-unit", "There is no inspection of a unit '" + serial + "'.")
          .with("field", "serial");
    }
    List<Inspection> closed =
        all.stream()
            .filter(i -> "closed".equals(i.state()))
            .filter(i -> tuning == null || tuning.equals(i.tuning()))
            .sorted(Comparator.comparing(Inspection::startedAt).reversed())
            .toList();
    if (closed.isEmpty()) {
      throw new Refusal(
              404,
              "unknown-tuning",
              "Unit "
                  + serial
                  + " has no closed inspection"
                  + (tuning == null ? "." : " in " + tuning + "."))
          .with("field", "tuning")
          .with("choices", all.stream().map(Inspection::tuning).distinct().toList());
    }
    return closed.stream()
        .filter(i -> inspections.curves(i.id()).isPresent())
        .findFirst()
        .orElseThrow(
            () ->
                new Refusal(
                    409,
                    "no-curves",
                    "Unit " + serial + " never sealed, so there is nothing to compare."));
  }

  /** The unit's own batch first, then the others by how near in time they lie. */
  private List<BatchSummary> batches(Inspection asked) {
    return inspections.batches().stream()
        .filter(
            batch ->
                batch.product().equals(asked.product()) && batch.tunings().contains(asked.tuning()))
        .sorted(
            Comparator.comparing((BatchSummary batch) -> !batch.batch().equals(asked.batch()))
                .thenComparing(
                    batch ->
                        Math.abs(batch.lastAt().toEpochMilli() - asked.startedAt().toEpochMilli())))
        .toList();
  }

  private Population population(
      Inspection asked, JudgedCurves curves, RegionMeasures measures, List<BatchSummary> batches) {
    BatchUnit self =
        new BatchUnit(
            asked.id(),
            asked.serial(),
            asked.station(),
            asked.occasion(),
            asked.verdict(),
            asked.startedAt(),
            0,
            List.of());
    Population population =
        new Population(
            measures,
            measures.pair(Curve.of(curves.left()), Curve.of(curves.right())),
            self,
            asked.batch());
    for (BatchSummary batch : batches) {
      if (population.size() < MOST_UNITS) {
        population.add(
            batch.batch(),
            inspections.batchCurves(batch.batch(), asked.product(), asked.tuning(), null));
      }
    }
    return population;
  }

  private Across across(
      Inspection asked,
      RegionMeasures measures,
      Population population,
      int of,
      int alike,
      Locale locale) {
    List<Measure> rows = new ArrayList<>();
    for (int r = 0; r < measures.regions().size(); r++) {
      for (What what : What.values()) {
        rows.add(population.measure(r, what));
      }
    }
    int worst = population.worstRegion();
    List<Member> members = population.inOrder();
    Map<String, List<Shipped>> shipped =
        dispatches.of(members.stream().map(Member::serial).toList());
    List<Member> uneven = worst < 0 ? List.of() : population.asUneven(worst, alike);
    int column = worst * RegionMeasures.EACH + What.WORST_DIFFERENCE.ordinal();
    return new Across(
        asked.serial(),
        asked.product(),
        asked.tuning(),
        asked.id(),
        asked.limitSetVersion(),
        worst < 0 ? "" : answer(rows.get(column), locale),
        members.size(),
        Math.max(of, members.size()),
        (int) members.stream().map(Member::batch).distinct().count(),
        rows,
        members.stream().map(m -> point(m, shipped)).toList(),
        near(population.nearest(Member::shapeDb, alike), Member::shapeDb, shipped),
        near(population.nearest(Member::differenceDb, alike), Member::differenceDb, shipped),
        near(uneven, m -> Math.abs(m.values()[column]), shipped),
        worst < 0 ? null : measures.regions().get(worst),
        notes(members.size(), of, locale));
  }

  private String answer(Measure measure, Locale locale) {
    Map<String, Object> values = new LinkedHashMap<>();
    values.put("region", measure.region());
    values.put("value", measure.value());
    values.put("share", Math.round(100 * Optional.ofNullable(measure.percentile()).orElse(0.0)));
    values.put("units", measure.units());
    values.put("batch", measure.batchMedian());
    values.put("others", Optional.ofNullable(measure.othersMedian()).orElse(0.0));
    if (measure.units() < ENOUGH) {
      return texts.render(locale, "across.answer.few", values);
    }
    String kind = measure.standsApart() ? "apart" : "like";
    return texts.render(
        locale, "across.answer." + kind + (measure.othersMedian() == null ? ".alone" : ""), values);
  }

  private List<String> notes(int units, int of, Locale locale) {
    return units >= MOST_UNITS
        ? List.of(texts.render(locale, "across.note.part", Map.of("units", units, "of", of)))
        : List.of();
  }

  private static Point point(Member member, Map<String, List<Shipped>> shipped) {
    return new Point(
        member.serial(),
        member.inspection(),
        member.at(),
        member.batch(),
        member.station(),
        member.verdict(),
        shipped.containsKey(member.serial()),
        Arrays.stream(member.values()).mapToObj(AcrossDesk::rounded).toList());
  }

  /** Thousandths of a dB are far finer than a plot or a measurement. */
  private static Double rounded(double db) {
    return Double.isNaN(db) ? null : (Double) (Math.round(db * 1000) / 1000.0);
  }

  private static List<Near> near(
      List<Member> members, ToDoubleFunction<Member> distance, Map<String, List<Shipped>> shipped) {
    return members.stream()
        .map(
            m ->
                new Near(
                    m.serial(),
                    m.inspection(),
                    m.batch(),
                    m.at(),
                    m.verdict(),
                    distance.applyAsDouble(m),
                    shipped.getOrDefault(m.serial(), List.of()).stream()
                        .map(
                            s ->
                                new AcrossJson.Delivery(s.dispatch(), s.reference(), s.shippedAt()))
                        .toList()))
        .toList();
  }
}
