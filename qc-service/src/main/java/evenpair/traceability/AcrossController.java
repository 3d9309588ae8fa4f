package evenpair.traceability;

import evenpair.traceability.AcrossJson.Across;
import evenpair.traceability.AcrossJson.Near;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Refusal;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RequestMapping("/api/units/{serial}")
@Tag(name = "Units")
@AllowedFor({Caller.ENGINEER, Caller.ADMINISTRATOR})
class AcrossController {
  private static final int MOST = 20_000;

  private static final Map<String, Function<Across, List<Near>>> BY =
      Map.of(
          "shape", Across::alikeInShape,
          "difference", Across::alikeInDifference,
          "uneven", Across::asUneven);

  private final AcrossDesk desk;

  AcrossController(AcrossDesk desk) {
    this.desk = desk;
  }

  @GetMapping("/across")
  @Operation(
      summary = "Is it this unit, or all of them?",
      description =
          "Every unit of the product in the tuning by its first inspection, set against this unit's golden response: region by region"
              + " the mean deviation of left and right, the mean and the worst of left − right; where this unit lies among them; units"
              + " like it, and which were shipped.")
  Across across(
      @Parameter(example = "SG2-004217") @PathVariable("serial") String serial,
      @Parameter(example = "plain") @RequestParam(required = false) String tuning,
      @Parameter(description = "units in each list, 1 to 20000") @RequestParam(defaultValue = "20")
          int alike,
      @Parameter(hidden = true) Locale locale) {
    return desk.of(serial, tuning, requireNumber(alike), locale);
  }

  @GetMapping("/across.csv")
  @Operation(
      summary = "Units like it, with their deliveries, as CSV (RFC 4180)",
      description =
          "by=uneven: units that take up as much of the match limit as this one, or more, in the region where it takes up most;"
              + " by=difference and by=shape: the nearest curves. For a recall or a reply.")
  @ApiResponse(
      responseCode = "200",
      content = @Content(mediaType = "text/csv", schema = @Schema(type = "string")))
  ResponseEntity<byte[]> csv(
      @Parameter(example = "SG2-004217") @PathVariable("serial") String serial,
      @Parameter(example = "plain") @RequestParam(required = false) String tuning,
      @Parameter(description = "uneven, difference or shape") @RequestParam(defaultValue = "uneven")
          String by,
      @Parameter(description = "units at most, 1 to 20000") @RequestParam(defaultValue = "20000")
          int alike,
      @Parameter(description = "true: only units of which a delivery is on record")
          @RequestParam(defaultValue = "false")
          boolean shipped,
      @Parameter(hidden = true) Locale locale) {
    Function<Across, List<Near>> list = BY.get(by);
    if (list == null) {
      throw new Refusal(400, "invalid-parameter", "\"by\" cannot be \"" + by + "\".")
          .with("field", "by")
          .with("choices", BY.keySet().stream().sorted().toList());
    }
    Across across = desk.of(serial, tuning, requireNumber(alike), locale);
    String name = "like-" + across.serial() + "-" + across.tuning() + "-" + by + ".csv";
    return ResponseEntity.ok()
        .contentType(new MediaType("text", "csv", StandardCharsets.UTF_8))
        .header(
            HttpHeaders.CONTENT_DISPOSITION,
            ContentDisposition.attachment()
                .filename(name, StandardCharsets.UTF_8)
                .build()
                .toString())
        .body(AcrossCsv.of(list.apply(across), shipped).getBytes(StandardCharsets.UTF_8));
  }

  private static int requireNumber(int alike) {
    if (alike < 1 || alike > MOST) {
      throw new Refusal(
              400, "invalid-parameter", "\"alike\" must be 1 to " + MOST + ", was " + alike + ".")
          .with("field", "alike")
          .with("expected", "1 to " + MOST);
    }
    return alike;
  }
}
