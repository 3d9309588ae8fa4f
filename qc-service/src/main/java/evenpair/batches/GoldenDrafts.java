package evenpair.batches;

import evenpair.access.SignedIn;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.batches.GoldenJson.BuildRequest;
import evenpair.batches.GoldenJson.Saved;
import evenpair.inspections.MeasuredCurves.MeasuredUnit;
import evenpair.products.GoldenResponses;
import evenpair.products.GoldenResponses.StoredGolden;
import evenpair.products.Products;
import evenpair.products.Products.Provenance;
import evenpair.tolerance.GoldenResponse;
import evenpair.web.Refusal;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/** Stores what was built as a draft of a new version, with what it was built from. */
@Component
class GoldenDrafts {
  private final Products products;
  private final GoldenResponses goldens;
  private final SignedIn signedIn;
  private final TransactionTemplate transaction;

  GoldenDrafts(
      Products products,
      GoldenResponses goldens,
      SignedIn signedIn,
      TransactionTemplate transaction) {
    this.products = products;
    this.goldens = goldens;
    this.signedIn = signedIn;
    this.transaction = transaction;
  }

  /**
   * @return the reference of the person who saves
   * @throws Refusal 403 if nobody is signed in, or somebody else than the request names
   */
  UUID author(BuildRequest request) {
    return signedIn.signer("author", request.author());
  }

  /**
   * @param name by which limit sets will refer to it
   * @throws Refusal 422 for a response with a gap, and as {@link Products#draftGolden}
   */
  Saved save(
      String product,
      String tuning,
      String name,
      UUID author,
      GoldenPool pool,
      List<MeasuredUnit> kept,
      List<MeasuredUnit> leftOut) {
    requireWhole(pool);
    GoldenResponse golden = new GoldenResponse(Curve.of(pool.levelDb()), pool.phaseDeg());
    Provenance provenance =
        new Provenance(kept.size(), Curve.of(pool.sdDb()), ids(kept), ids(leftOut));
    UUID id =
        transaction.execute(
            status -> products.draftGolden(product, tuning, name, golden, author, provenance));
    StoredGolden draft =
        goldens.of(product, tuning).stream()
            .filter(stored -> stored.id().equals(id))
            .findFirst()
            .orElseThrow();
    String all = "/api/products/" + product + "/tunings/" + tuning + "/golden-responses/";
    return new Saved(draft.version(), draft.name(), "draft", all + draft.version());
  }

  private static void requireWhole(GoldenPool pool) {
    pool.firstGap()
        .ifPresent(
            gap -> {
              throw new Refusal(
                      422,
                      "golden-response-has-a-gap",
                      "No curve has a level at "
                          + Grid.label(gap)
                          + " Hz, and a golden response must be whole.")
                  .with("field", "inspections");
            });
  }

  private static List<UUID> ids(List<MeasuredUnit> units) {
    return units.stream().map(MeasuredUnit::inspection).toList();
  }
}
