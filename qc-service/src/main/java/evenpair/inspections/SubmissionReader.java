package evenpair.inspections;

import evenpair.web.Refusal;
import java.util.Set;

/** Reads the part {@code inspection}. */
final class SubmissionReader {
  private static final Set<String> FIELDS =
      Set.of(
          "serial",
          "batch",
          "product",
          "tuning",
          "station",
          "operator",
          "seating",
          "occasion",
          "measuredAt",
          "stimulus",
          "leftEarpiece",
          "rightEarpiece");
  private static final int HIGHEST_SEATING = 100;

  private SubmissionReader() {}

  /**
   * @throws Refusal 400 if it is not such an object; names the field and what would be right
   */
  static Submission read(byte[] json) {
    JsonFields fields = JsonFields.read("inspection", json, FIELDS);
    Submission submission =
        new Submission(
            fields.name("serial"),
            fields.name("batch"),
            fields.text("product", Names.LONGEST),
            fields.text("tuning", Names.LONGEST),
            fields.text("station", Names.LONGEST),
            fields.text("operator", Names.LONGEST),
            fields.wholeNumber("seating", 1, HIGHEST_SEATING, 1),
            fields
                .choice("occasion", Occasion::named, Occasion.words())
                .orElse(Occasion.PRODUCTION),
            fields.instant("measuredAt"),
            fields.optionalText("stimulus", Names.LONGEST).filter(name -> !name.equals("default")),
            fields.optionalName("leftEarpiece").orElse(null),
            fields.optionalName("rightEarpiece").orElse(null));
    fields.refuseIfAnyProblem();
    return submission;
  }
}
