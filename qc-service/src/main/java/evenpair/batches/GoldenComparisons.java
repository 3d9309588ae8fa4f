package evenpair.batches;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.batches.CurveComparison.NamedBand;
import evenpair.batches.GoldenJson.Comparison;
import evenpair.batches.GoldenJson.RegionDifference;
import evenpair.products.GoldenResponses;
import evenpair.products.GoldenResponses.StoredGolden;
import evenpair.products.Products;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Component;

/** Compares golden responses by the regions of the tuning's active limit set. */
@Component
class GoldenComparisons {
  private final Products products;
  private final GoldenResponses goldens;
  private final Clock clock;

  GoldenComparisons(Products products, GoldenResponses goldens, Clock clock) {
    this.products = products;
    this.goldens = goldens;
    this.clock = clock;
  }

  /**
   * @throws evenpair.web.Refusal 404 for what is unknown
   */
  Comparison versions(String product, String tuning, int one, int other, GoldenWords words) {
    StoredGolden first = goldens.version(product, tuning, one);
    StoredGolden second = goldens.version(product, tuning, other);
    return compare(
        first.response().level(),
        words.version(one),
        second.response().level(),
        words.version(other),
        regions(product, tuning, words),
        words);
  }

  /**
   * @return a new response against the golden response of the active limit set, if there is one
   */
  Optional<Comparison> withActive(String product, String tuning, Curve level, GoldenWords words) {
    return active(product, tuning)
        .map(
            golden ->
                compare(
                    level,
                    words.text("which.this", Map.of()),
                    golden.response().level(),
                    words.version(golden.version()),
                    regions(product, tuning, words),
                    words));
  }

  /**
   * @return a new response against what the tuning's filters should give, if it is a DSP setting
   */
  Optional<Comparison> withExpected(String product, String tuning, Curve level, GoldenWords words) {
    String from =
        products
            .find(product)
            .flatMap(known -> known.tuning(tuning))
            .flatMap(Products.Tuning::from)
            .orElse("");
    return products
        .expectedGolden(product, tuning)
        .map(
            expected ->
                compare(
                    level,
                    words.text("which.this", Map.of()),
                    expected.level(),
                    words.text("which.expected", Map.of("tuning", from)),
                    regions(product, tuning, words),
                    words));
  }

  /**
   * @return the golden response that the active limit set judges by
   */
  Optional<StoredGolden> active(String product, String tuning) {
    return products
        .activeAt(product, tuning, clock.instant())
        .flatMap(
            set ->
                goldens.of(product, tuning).stream()
                    .filter(golden -> golden.id().equals(set.goldenId()))
                    .findFirst());
  }

  private List<NamedBand> regions(String product, String tuning, GoldenWords words) {
    return products
        .activeAt(product, tuning, clock.instant())
        .map(
            active ->
                active.set().regions().stream()
                    .map(region -> new NamedBand(region.name(), region.band()))
                    .toList())
        .orElseGet(
            () ->
                List.of(
                    new NamedBand(
                        words.text("whole-range", Map.of()),
                        new Band(Grid.label(0), Grid.label(Grid.POINTS - 1)))));
  }

  private static Comparison compare(
      Curve one,
      String which,
      Curve other,
      String with,
      List<NamedBand> regions,
      GoldenWords words) {
    CurveComparison found = CurveComparison.of(one, other, regions);
    return new Comparison(
        which,
        with,
        Grid.frequencies(),
        Rounded.of(found.difference().toArray()),
        Rounded.orNull(found.offsetDb()),
        found.largest().stream()
            .map(
                largest ->
                    new RegionDifference(
                        largest.region().name(),
                        largest.region().band().fromHz(),
                        largest.region().band().toHz(),
                        Rounded.of(largest.db()),
                        Grid.label(largest.at()),
                        words.largest(largest, which, with)))
            .toList());
  }
}
