package evenpair.certificates;

import evenpair.certificates.Bundles.Bundle;
import evenpair.inspections.Inspections;
import evenpair.inspections.Inspections.BatchSummary;
import evenpair.print.PaperSize;
import evenpair.products.Products;
import evenpair.web.Ids;
import evenpair.web.Refusal;
import evenpair.web.jobs.Jobs;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Takes orders to print a batch's certificates, and forgets old prints. */
@Service
class BundleDesk {
  private static final Logger LOG = LoggerFactory.getLogger(BundleDesk.class);
  private static final Duration KEPT = Duration.ofDays(30);

  private final Bundles bundles;
  private final Inspections inspections;
  private final Products products;
  private final Jobs jobs;
  private final Ids ids;
  private final Clock clock;

  BundleDesk(
      Bundles bundles,
      Inspections inspections,
      Products products,
      Jobs jobs,
      Ids ids,
      Clock clock) {
    this.bundles = bundles;
    this.inspections = inspections;
    this.products = products;
    this.jobs = jobs;
    this.ids = ids;
    this.clock = clock;
  }

  /**
   * Starts to print, unless the same is being printed already.
   *
   * @param product null: the batch's only one
   * @return the job
   * @throws Refusal 404 for an unknown batch, 422 with choices for several products, 409 if no unit
   *     has passed
   */
  @Transactional
  UUID print(String batch, String product, PaperSize paper, Locale locale) {
    BatchSummary meant = summary(batch, product);
    bundles.lock(batch, meant.product());
    Bundle order =
        new Bundle(ids.next(), null, batch, meant.product(), paper.word(), locale.toLanguageTag());
    return bundles.unfinished(order).map(Bundle::job).orElseGet(() -> start(order, meant));
  }

  private UUID start(Bundle order, BatchSummary batch) {
    List<String> serials = passed(batch);
    if (serials.isEmpty()) {
      throw new Refusal(
          409,
          "nothing-to-print",
          "No unit of batch " + order.batch() + " has passed: there is no certificate to print.");
    }
    UUID job = jobs.start(BatchPrinting.NAME, BatchPrinting.parameters(order.id()));
    Bundle bundle =
        new Bundle(
            order.id(), job, order.batch(), order.product(), order.paper(), order.language());
    bundles.add(bundle, serials, clock.instant());
    return job;
  }

  private BatchSummary summary(String batch, String product) {
    List<BatchSummary> known =
        inspections.batches().stream().filter(summary -> summary.batch().equals(batch)).toList();
    if (known.isEmpty()) {
      throw new Refusal(
          404, "unknown-batch", "No unit of a batch \"" + batch + "\" has been judged.");
    }
    List<BatchSummary> meant =
        known.stream()
            .filter(summary -> product == null || summary.product().equals(product))
            .toList();
    if (meant.size() != 1) {
      throw new Refusal(
              422, "mixed-batch", "Batch " + batch + " holds several products. Choose one.")
          .with(
              "choices",
              known.stream().map(summary -> Map.of("product", summary.product())).toList());
    }
    return meant.get(0);
  }

  /**
   * @return units that passed in the first required tuning, in production order; whether a unit has
   *     passed as a whole is asked when its turn comes
   */
  private List<String> passed(BatchSummary batch) {
    return products
        .find(batch.product())
        .flatMap(
            product -> product.tunings().stream().filter(Products.Tuning::required).findFirst())
        .map(
            tuning ->
                inspections
                    .batchCurves(batch.batch(), batch.product(), tuning.key(), null)
                    .units()
                    .stream()
                    .filter(unit -> "PASS".equals(unit.verdict()))
                    .map(Inspections.BatchUnit::serial)
                    .distinct()
                    .toList())
        .orElse(List.of());
  }

  @Scheduled(initialDelayString = "PT20M", fixedDelayString = "PT12H")
  void forget() {
    int forgotten = bundles.forgetBefore(clock.instant().minus(KEPT));
    if (forgotten > 0) {
      LOG.info("{} prints of batches older than {} days forgotten", forgotten, KEPT.toDays());
    }
  }
}
