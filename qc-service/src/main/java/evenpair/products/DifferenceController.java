package evenpair.products;

import evenpair.acoustics.Grid;
import evenpair.products.Products.StoredLimitSet;
import evenpair.products.VersionRows.Limits;
import evenpair.tolerance.LimitCurves;
import evenpair.tolerance.LimitSet;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Texts;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RequestMapping(LimitSetController.PATH)
@Tag(name = "products")
class DifferenceController {
  private final StoredProducts products;
  private final LimitTexts limitTexts;
  private final Texts texts;

  DifferenceController(StoredProducts products, LimitTexts limitTexts, Texts texts) {
    this.products = products;
    this.limitTexts = limitTexts;
    this.texts = texts;
  }

  /**
   * @param fromVersion the one that is compared with
   * @param words one sentence a change; empty if both say the same
   */
  record Difference(
      @Schema(example = "2") int fromVersion,
      @Schema(example = "3") int toVersion,
      @Schema(example = "[\"The mid window narrowed from ±1.5 dB to ±1.2 dB, 200 Hz–6 kHz.\"]")
          List<String> words,
      @Schema(description = "Hz") double[] frequencyHz,
      Lines from,
      Lines to) {}

  @Schema(description = "As deviation from the golden response, dB; null where nothing is judged")
  record Lines(double[] lowerDb, double[] upperDb, double[] matchDb) {
    static Lines of(LimitSet set) {
      LimitCurves curves = LimitCurves.of(set);
      return new Lines(curves.lowerDb(), curves.upperDb(), curves.matchDb());
    }
  }

  @GetMapping("/{version}/difference")
  @AllowedFor({Caller.ENGINEER, Caller.ADMINISTRATOR})
  @Operation(summary = "What changed from another version to this one, in words and as curves")
  Difference between(
      @Parameter(example = "sedge-2") @PathVariable("product") String product,
      @Parameter(example = "plain") @PathVariable("tuning") String tuning,
      @Parameter(example = "3") @PathVariable("version") int version,
      @Parameter(example = "2", description = "the other version") @RequestParam("from") int from,
      Locale locale) {
    Snapshot known = products.snapshot();
    Limits before = Versions.limitSet(known, product, tuning, from);
    Limits after = Versions.limitSet(known, product, tuning, version);
    return difference(known, stored(known, before), stored(known, after), locale);
  }

  private static StoredLimitSet stored(Snapshot known, Limits row) {
    return known.stored(row.id()).orElseThrow();
  }

  @PostMapping(
      path = "/difference",
      consumes = {Bodies.YAML, "application/x-yaml", "text/yaml", MediaType.APPLICATION_JSON_VALUE})
  @AllowedFor({Caller.ENGINEER, Caller.ADMINISTRATOR})
  @Operation(
      summary = "What a set that is not stored changes against a version",
      requestBody =
          @io.swagger.v3.oas.annotations.parameters.RequestBody(
              required = true,
              content = @Content(mediaType = Bodies.YAML, schema = @Schema(type = "string"))))
  Difference unstored(
      @Parameter(example = "sedge-2") @PathVariable("product") String product,
      @Parameter(example = "plain") @PathVariable("tuning") String tuning,
      @Parameter(example = "2", description = "the version") @RequestParam("from") int from,
      @Parameter(hidden = true) InputStream body,
      Locale locale)
      throws IOException {
    StoredLimitSet after = limitTexts.read(product, tuning, Bodies.read(body));
    Snapshot known = products.snapshot();
    Limits before = Versions.limitSet(known, product, tuning, from);
    return difference(known, stored(known, before), after, locale);
  }

  private Difference difference(
      Snapshot known, StoredLimitSet from, StoredLimitSet to, Locale locale) {
    List<String> words = new ArrayList<>();
    if (!from.goldenId().equals(to.goldenId())) {
      words.add(
          texts.render(
              locale,
              "difference.golden",
              Map.of(
                  "from", known.golden(from.goldenId()).version(),
                  "to", known.golden(to.goldenId()).version())));
    }
    LimitDifference.between(from.set(), to.set()).stream()
        .map(change -> texts.render(locale, "difference." + change.key(), change.values()))
        .forEach(words::add);
    return new Difference(
        from.set().version(),
        to.set().version(),
        words,
        Grid.frequencies(),
        Lines.of(from.set()),
        Lines.of(to.set()));
  }
}
