package evenpair.batches;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.batches.GoldenJson.Build;
import evenpair.batches.GoldenJson.BuildRequest;
import evenpair.batches.GoldenJson.Saved;
import evenpair.inspections.MeasuredCurves.MeasuredUnit;
import evenpair.products.GoldenResponses;
import evenpair.products.GoldenResponses.StoredGolden;
import evenpair.tolerance.GoldenResponse;
import evenpair.web.Refusal;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;

/** Builds a golden response from measured units and, if asked, stores it as a draft. */
@Component
class GoldenBuilder {
  private final GoldenSelection selection;
  private final GoldenComparisons comparisons;
  private final GoldenResponses goldens;

  GoldenBuilder(
      GoldenSelection selection, GoldenComparisons comparisons, GoldenResponses goldens) {
    this.selection = selection;
    this.comparisons = comparisons;
    this.goldens = goldens;
  }

  /**
   * @throws Refusal 404 for an unknown product, tuning or batch, 400 or 422 for what cannot be built
   *     or saved
   */
  Build build(String product, String tuning, BuildRequest request, GoldenWords words) {
    goldens.of(product, tuning);
    boolean save = Boolean.TRUE.equals(request.save());
    if (save && request.author() == null) {
      throw new Refusal(400, "invalid-field", "To save, say who does: \"author\" is missing.")
          .with("field", "author")
          .with("expected", "a name or badge of 1 to 64 characters");
    }
    List<MeasuredUnit> units = selection.of(product, tuning, request);
    Set<UUID> leaveOut = new HashSet<>(GoldenSelection.leftOut(request));
    List<MeasuredUnit> kept =
        units.stream().filter(unit -> !leaveOut.contains(unit.inspection())).toList();
    List<MeasuredUnit> others =
        units.stream().filter(unit -> leaveOut.contains(unit.inspection())).toList();
    GoldenPool pool = GoldenPool.of(kept);
    GoldenMembers members = GoldenMembers.of(kept, others, pool, words);
    Curve level = Curve.of(pool.levelDb());
    Saved saved = save ? save(product, tuning, request, pool) : null;
    return new Build(
        product,
        tuning,
        kept.size(),
        2 * kept.size(),
        Grid.frequencies(),
        Rounded.of(pool.levelDb()),
        pool.phaseDeg().map(Rounded::of).orElse(null),
        Rounded.of(pool.sdDb()),
        Rounded.of(pool.madDb()),
        pool.count(),
        members.rows(),
        comparisons.withActive(product, tuning, level, words).orElse(null),
        comparisons.withExpected(product, tuning, level, words).orElse(null),
        List.of(
            words.text("method.median", Map.of()),
            words.text("method.distance", Map.of()),
            words.text("method.shape", Map.of())),
        members.notes(),
        saved);
  }

  private Saved save(String product, String tuning, BuildRequest request, GoldenPool pool) {
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
    String name =
        request.name() != null
            ? request.name()
            : comparisons
                .active(product, tuning)
                .map(StoredGolden::name)
                .orElse(tuning + "-golden.csv");
    GoldenResponse golden = new GoldenResponse(Curve.of(pool.levelDb()), pool.phaseDeg());
    StoredGolden draft = goldens.draft(product, tuning, name, golden, request.author());
    return new Saved(
        draft.version(),
        draft.name(),
        "draft",
        "/api/products/"
            + product
            + "/tunings/"
            + tuning
            + "/golden-responses/"
            + draft.version());
  }
}
