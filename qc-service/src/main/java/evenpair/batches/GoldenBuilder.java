package evenpair.batches;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.batches.GoldenJson.Build;
import evenpair.batches.GoldenJson.BuildRequest;
import evenpair.batches.GoldenJson.Saved;
import evenpair.inspections.MeasuredCurves.MeasuredUnit;
import evenpair.products.GoldenResponses;
import evenpair.products.GoldenResponses.StoredGolden;
import evenpair.web.Refusal;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;

/** Builds a golden response from measured units and, if asked, has it stored as a draft. */
@Component
class GoldenBuilder {
  private final GoldenResponses goldens;
  private final GoldenSelection selection;
  private final GoldenComparisons comparisons;
  private final GoldenDrafts drafts;

  GoldenBuilder(
      GoldenResponses goldens,
      GoldenSelection selection,
      GoldenComparisons comparisons,
      GoldenDrafts drafts) {
    this.goldens = goldens;
    this.selection = selection;
    this.comparisons = comparisons;
    this.drafts = drafts;
  }

  /**
   * @throws Refusal 404 for an unknown product, tuning or batch, 400 or 422 for what cannot be
   *     built or saved
   */
  Build build(String product, String tuning, BuildRequest request, GoldenWords words) {
    List<StoredGolden> versions = goldens.of(product, tuning);
    boolean save = Boolean.TRUE.equals(request.save());
    UUID author = save ? drafts.author(request) : null;
    List<MeasuredUnit> units = selection.of(product, tuning, request);
    Set<UUID> leaveOut = new HashSet<>(GoldenSelection.leftOut(request));
    List<MeasuredUnit> kept =
        units.stream().filter(unit -> !leaveOut.contains(unit.inspection())).toList();
    List<MeasuredUnit> others =
        units.stream().filter(unit -> leaveOut.contains(unit.inspection())).toList();
    GoldenPool pool = GoldenPool.of(kept);
    Build preview = preview(product, tuning, pool, kept, others, words);
    if (!save) {
      return preview;
    }
    String name = request.name() != null ? request.name() : name(product, tuning, versions);
    Saved saved = drafts.save(product, tuning, name, author, pool, kept, others);
    return preview.with(saved);
  }

  private Build preview(
      String product,
      String tuning,
      GoldenPool pool,
      List<MeasuredUnit> kept,
      List<MeasuredUnit> others,
      GoldenWords words) {
    GoldenMembers members = GoldenMembers.of(kept, others, pool, words);
    Curve level = Curve.of(pool.levelDb());
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
        null);
  }

  /** The name that limit sets use already; a tuning's first response gets one after the tuning. */
  private String name(String product, String tuning, List<StoredGolden> versions) {
    return comparisons
        .active(product, tuning)
        .or(() -> versions.stream().reduce((older, newer) -> newer))
        .map(StoredGolden::name)
        .orElse(tuning + "-golden.csv");
  }
}
