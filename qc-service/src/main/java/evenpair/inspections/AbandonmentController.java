package evenpair.inspections;

import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.ExampleObject;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import org.springframework.http.MediaType;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;

/** Lets a person end an open inspection without a verdict. */
@RestController
@AllowedFor({Caller.OPERATOR, Caller.ENGINEER})
@Tag(name = "Inspections")
class AbandonmentController {
  private final Abandonment abandonment;
  private final InspectionFiles files;
  private final InspectionJsons jsons;
  private final TransactionTemplate transactions;

  AbandonmentController(
      Abandonment abandonment,
      InspectionFiles files,
      InspectionJsons jsons,
      TransactionTemplate transactions) {
    this.abandonment = abandonment;
    this.files = files;
    this.jsons = jsons;
    this.transactions = transactions;
  }

  @Schema(name = "AbandonmentRequest")
  record Description(
      @Schema(description = "name or badge") String operator,
      @Schema(description = "wrong-unit, unit-damaged, station-fault or withdrawn")
          String reason) {}

  @PostMapping(
      path = "/api/inspections/{id}/abandonment",
      consumes = MediaType.APPLICATION_JSON_VALUE)
  @Operation(
      summary = "End an open inspection without a verdict",
      requestBody =
          @io.swagger.v3.oas.annotations.parameters.RequestBody(
              content =
                  @Content(
                      mediaType = MediaType.APPLICATION_JSON_VALUE,
                      schema = @Schema(implementation = Description.class),
                      examples = @ExampleObject(InspectionExamples.ABANDONMENT))))
  InspectionJson abandon(
      @PathVariable UUID id, @RequestBody byte[] body, @Parameter(hidden = true) Locale locale) {
    JsonFields fields = JsonFields.read("body", body, Set.of("operator", "reason"));
    String operator = fields.text("operator", Names.LONGEST);
    var reason =
        fields.choice("reason", AbandonReason::givenByAPerson, AbandonReason.wordsForPeople());
    if (reason.isEmpty()) {
      fields.missing("reason", "one of " + String.join(", ", AbandonReason.wordsForPeople()));
    }
    fields.refuseIfAnyProblem();
    abandonment.byPerson(id, operator, reason.orElseThrow());
    return transactions.execute(status -> jsons.whole(files.find(id).orElseThrow(), locale));
  }
}
