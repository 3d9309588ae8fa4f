package evenpair.batches;

import evenpair.batches.ExportDictionary.Dictionary;
import evenpair.inspections.InspectionStream;
import evenpair.inspections.Inspections;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import java.util.Map;
import org.springframework.core.io.InputStreamResource;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.json.JsonMapper;

/**
 * A batch as a file for other programs. The file is written whole before a byte is sent, so that
 * what fails on the way is a problem document and never half a file; on disk it lives for as long
 * as it is sent.
 */
@RestController
@RequestMapping("/api/batches/{batch}")
@Tag(name = "Batches")
@AllowedFor({Caller.ENGINEER, Caller.ADMINISTRATOR})
class ExportController {
  private static final MediaType CSV = new MediaType("text", "csv", StandardCharsets.UTF_8);
  private static final MediaType PARQUET =
      MediaType.parseMediaType("application/vnd.apache.parquet");
  private static final JsonMapper JSON = JsonMapper.builder().build();

  private final Inspections inspections;
  private final InspectionStream stream;
  private final ExportDictionary dictionary;

  ExportController(Inspections inspections, InspectionStream stream, ExportDictionary dictionary) {
    this.inspections = inspections;
    this.stream = stream;
    this.dictionary = dictionary;
  }

  @GetMapping("/export.csv")
  @Operation(
      summary = "Every closed inspection of a part of the batch as CSV (RFC 4180)",
      description =
          "One line an inspection: scalars, then the levels of left and right at the 241 grid points, one column each. The columns"
              + " are explained by export-dictionary. Nothing of the people who measured is in it.")
  @ApiResponse(
      responseCode = "200",
      content = @Content(mediaType = "text/csv", schema = @Schema(type = "string")))
  @ApiResponse(responseCode = "422", description = "Several parts: choices names them")
  ResponseEntity<InputStreamResource> csv(
      @Parameter(example = "SW-2647") @PathVariable("batch") String batch,
      @Parameter(example = "sedge-2") @RequestParam(required = false) String product,
      @Parameter(example = "plain") @RequestParam(required = false) String tuning,
      @Parameter(description = "version") @RequestParam(required = false) Integer limitSet)
      throws IOException {
    ExportPart part = part(batch, product, tuning, limitSet);
    Path file = Files.createTempFile("evenpair-export", ".csv");
    try (CsvExport out = new CsvExport(file)) {
      stream.each(batch, part.product(), part.tuning(), part.limitSet(), out::add);
    } catch (IOException | RuntimeException e) {
      Files.deleteIfExists(file);
      throw e;
    }
    return sent(file, part.fileName("csv"), CSV);
  }

  @GetMapping("/export.parquet")
  @Operation(
      summary = "The same as a Parquet file",
      description =
          "Curves are lists of 241 floats, reasons and regions lists of structures; the key-value metadata holds the data dictionary"
              + " (evenpair.dictionary) with frequencies, golden response and limits.")
  @ApiResponse(
      responseCode = "200",
      content =
          @Content(
              mediaType = "application/vnd.apache.parquet",
              schema = @Schema(type = "string", format = "binary")))
  @ApiResponse(responseCode = "422", description = "Several parts: choices names them")
  ResponseEntity<InputStreamResource> parquet(
      @Parameter(example = "SW-2647") @PathVariable("batch") String batch,
      @Parameter(example = "sedge-2") @RequestParam(required = false) String product,
      @Parameter(example = "plain") @RequestParam(required = false) String tuning,
      @Parameter(description = "version") @RequestParam(required = false) Integer limitSet,
      @Parameter(hidden = true) Locale locale)
      throws IOException {
    ExportPart part = part(batch, product, tuning, limitSet);
    Map<String, String> metadata =
        Map.of("evenpair.dictionary", JSON.writeValueAsString(dictionary.of(part, locale)));
    Path file = Files.createTempFile("evenpair-export", ".parquet");
    try (ParquetExport out = new ParquetExport(file, metadata)) {
      stream.each(batch, part.product(), part.tuning(), part.limitSet(), out::add);
    } catch (IOException | RuntimeException e) {
      Files.deleteIfExists(file);
      throw e;
    }
    return sent(file, part.fileName("parquet"), PARQUET);
  }

  @GetMapping("/export-dictionary")
  @Operation(summary = "What the columns of an export mean, with golden response and limits")
  Dictionary dictionary(
      @Parameter(example = "SW-2647") @PathVariable("batch") String batch,
      @Parameter(example = "sedge-2") @RequestParam(required = false) String product,
      @Parameter(example = "plain") @RequestParam(required = false) String tuning,
      @Parameter(description = "version") @RequestParam(required = false) Integer limitSet,
      @Parameter(hidden = true) Locale locale) {
    return dictionary.of(part(batch, product, tuning, limitSet), locale);
  }

  private ExportPart part(String batch, String product, String tuning, Integer limitSet) {
    return ExportPart.of(inspections, stream, batch, product, tuning, limitSet);
  }

  /** The file is gone when the stream is closed, sent to its end or not. */
  private static ResponseEntity<InputStreamResource> sent(Path file, String name, MediaType type)
      throws IOException {
    return ResponseEntity.ok()
        .contentType(type)
        .contentLength(Files.size(file))
        .header(
            HttpHeaders.CONTENT_DISPOSITION,
            ContentDisposition.attachment()
                .filename(name, StandardCharsets.UTF_8)
                .build()
                .toString())
        .body(
            new InputStreamResource(
                Files.newInputStream(file, StandardOpenOption.DELETE_ON_CLOSE)));
  }
}
