package evenpair.inspections;

import evenpair.products.Products.Tuning;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Refusal;
import evenpair.web.Texts;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/** A unit as a whole, over its tunings. */
@RestController
@AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
@Tag(name = "Units")
@Transactional(readOnly = true)
class UnitController {
  private final InspectionFiles files;
  private final InspectionJsons jsons;
  private final Texts texts;

  UnitController(InspectionFiles files, InspectionJsons jsons, Texts texts) {
    this.files = files;
    this.jsons = jsons;
    this.texts = texts;
  }

  @Schema(name = "Unit")
  record UnitJson(
      @Schema(example = "SG2-004217") String serial,
      String product,
      String productName,
      @Schema(description = "of its newest inspection") String batch,
      @Schema(description = "the current occasion, which the verdict is about") String occasion,
      @Schema(description = "PASS, FAIL or INCOMPLETE over the tunings that the product requires")
          String verdict,
      List<TuningJson> tunings,
      @Schema(description = "oldest first") List<InspectionJson> inspections) {}

  /**
   * @param verdict PASS or FAIL of its last closed inspection in the current occasion, or null
   */
  @Schema(name = "UnitTuning")
  record TuningJson(
      String tuning,
      boolean required,
      String verdict,
      UUID inspection,
      @Schema(
              nullable = true,
              description =
                  "missing, wrong or doubled; null if nothing is wrong with how it was inspected")
          String problem,
      @Schema(nullable = true, description = "the tuning that was heard instead") String soundsLike,
      @Schema(nullable = true) String problemText) {}

  @GetMapping("/api/units/{serial}")
  @Operation(summary = "A unit's verdict and every inspection of it")
  public UnitJson unit(@PathVariable String serial, @Parameter(hidden = true) Locale locale) {
    List<InspectionFile> inspections = Names.accept(serial).map(files::ofUnit).orElse(List.of());
    if (inspections.isEmpty()) {
      throw new Refusal(404, "unknown-unit", "There is no inspection of a unit '" + serial + "'.")
          .with("field", "serial");
    }
    InspectionFile newest = inspections.get(inspections.size() - 1);
    Occasion occasion = newest.unit().occasion();
    return new UnitJson(
        newest.row().serial(),
        newest.product().key(),
        newest.product().name(),
        newest.row().batch(),
        occasion == null ? null : occasion.word(),
        newest.unit().verdict(),
        newest.product().tunings().stream()
            .map(tuning -> tuning(tuning, occasion, inspections, locale))
            .toList(),
        inspections.stream().map(file -> jsons.summary(file, locale)).toList());
  }

  private TuningJson tuning(
      Tuning tuning, Occasion occasion, List<InspectionFile> ofUnit, Locale locale) {
    List<InspectionRow> rows = ofUnit.stream().map(InspectionFile::row).toList();
    Optional<InspectionRow> last = UnitVerdict.lastClosed(rows, tuning.key(), occasion);
    Optional<TuningProblem> problem = TuningProblem.of(tuning, occasion, ofUnit);
    return new TuningJson(
        tuning.key(),
        tuning.required(),
        last.map(row -> row.verdict().name()).orElse(null),
        last.map(InspectionRow::id).orElse(null),
        problem.map(p -> p.kind().word()).orElse(null),
        problem.map(TuningProblem::soundsLike).orElse(null),
        problem.map(p -> text(tuning, p, locale)).orElse(null));
  }

  private String text(Tuning tuning, TuningProblem problem, Locale locale) {
    String heard = problem.soundsLike() == null ? "" : problem.soundsLike();
    return texts.render(
        locale,
        "unit.tuning." + problem.kind().word(),
        Map.of("tuning", tuning.key(), "heard", heard));
  }
}
