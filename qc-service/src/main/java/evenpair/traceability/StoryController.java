package evenpair.traceability;

import evenpair.access.People;
import evenpair.access.SignedIn;
import evenpair.inspections.KnownUnits;
import evenpair.inspections.KnownUnits.KnownUnit;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Refusal;
import evenpair.web.Texts;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/** Everything that is on record of a unit, in one order. */
@RestController
@Tag(name = "Units")
@Transactional(readOnly = true)
class StoryController {
  /** Those who may see who people are. */
  private static final Set<Caller> NAMES = Set.of(Caller.ENGINEER, Caller.ADMINISTRATOR);

  private final KnownUnits units;
  private final List<StoryPart> parts;
  private final People people;
  private final SignedIn signedIn;
  private final Texts texts;

  StoryController(
      KnownUnits units, List<StoryPart> parts, People people, SignedIn signedIn, Texts texts) {
    this.units = units;
    this.parts = parts;
    this.people = people;
    this.signedIn = signedIn;
    this.texts = texts;
  }

  @Schema(name = "UnitStory")
  record Story(
      String serial,
      String product,
      String batch,
      String verdict,
      @Schema(description = "whether people are named") boolean names,
      @Schema(description = "oldest first") List<StoryEvent> events) {}

  @GetMapping("/api/units/{serial}/story")
  @AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
  @Operation(
      summary = "A unit's story: one timeline from its first mounting to its certificate and after",
      description =
          "Mountings with station and the calibrations of that time, verdicts with the limit set's version and its approval, rework,"
              + " pairing, deliveries, outside reports, record codes. People appear by their role; engineers and administrators see"
              + " names, unless they were erased.")
  public Story story(
      @Parameter(example = "SG2-004217") @PathVariable("serial") String serial,
      @Parameter(hidden = true) Locale locale) {
    KnownUnit unit = units.of(List.of(serial)).get(serial);
    if (unit == null) {
      throw new Refusal(404, "unknown-unit", "There is no inspection of a unit '" + serial + "'.")
          .with("field", "serial");
    }
    boolean names = signedIn.roles().stream().anyMatch(NAMES::contains);
    StoryWords words = new StoryWords(texts, locale, people, names);
    List<StoryEvent> events =
        parts.stream()
            .flatMap(part -> part.of(unit.serial(), words).stream())
            .sorted(Comparator.comparing(StoryEvent::at))
            .toList();
    return new Story(unit.serial(), unit.product(), unit.batch(), unit.verdict(), names, events);
  }
}
