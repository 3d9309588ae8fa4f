package evenpair.batches;

import evenpair.batches.StatisticsJson.About;
import evenpair.batches.StatisticsJson.Capabilities;
import evenpair.batches.StatisticsJson.Charts;
import evenpair.batches.StatisticsJson.Components;
import evenpair.batches.StatisticsJson.StationComparison;
import evenpair.inspections.Inspections.BatchCurves;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.products.Products;
import evenpair.tolerance.LimitSet;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Texts;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springdoc.core.annotations.ParameterObject;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** The panels below a batch's statistics. Each unit counts once, by its first closed inspection. */
@RestController
@Tag(name = "Batches")
@AllowedFor({Caller.ENGINEER, Caller.ADMINISTRATOR})
@ApiResponse(responseCode = "200", description = "The figures, or what it takes to have them")
@ApiResponse(
    responseCode = "400",
    description = "A parameter is not what it should be",
    content = @Content)
@ApiResponse(responseCode = "404", description = "No such batch", content = @Content)
@ApiResponse(
    responseCode = "422",
    description = "More than one product, tuning or limit set, or no unit left: choices names them",
    content = @Content)
class StatisticsController {
  private final Selection selection;
  private final Products products;
  private final Texts texts;

  StatisticsController(Selection selection, Products products, Texts texts) {
    this.selection = selection;
    this.products = products;
    this.texts = texts;
  }

  @GetMapping("/api/batches/{batch}/capability")
  @Operation(
      summary = "Capability of every region, of level, balance and match",
      description =
          "Cp and Cpk from one unit to the next, Pp and Ppk of all units, each with its interval;"
              + " where the values cannot be normal (Anderson–Darling), percentiles from 741 units"
              + " on, else what counting says. quoted names the number that may be quoted.")
  Capabilities capability(
      @Parameter(example = "SW-2647") @PathVariable("batch") String batch,
      @ParameterObject Part part,
      Locale locale) {
    Read read = read(batch, part);
    StatisticsWords words = new StatisticsWords(texts, locale);
    return new Capabilities(
        read.about(),
        new CapabilityFigures(words).rows(read.quantities()),
        words.text("capability.method"),
        read.about().n() < 30
            ? List.of(words.text("capability.note.few", Map.of("have", read.about().n())))
            : List.of());
  }

  @GetMapping("/api/batches/{batch}/charts")
  @Operation(
      summary = "A control chart over production order",
      description =
          "One quantity by one kind of chart, with the rules that signal and the units at each"
              + " point. choices names every quantity that can be asked for.")
  Charts charts(
      @Parameter(example = "SW-2647") @PathVariable("batch") String batch,
      @ParameterObject Part part,
      @ParameterObject ChartRequest request,
      Locale locale) {
    Read read = read(batch, part);
    return new ChartFigures(
            new StatisticsWords(texts, locale), read.units(), read.quantities(), read.about())
        .chart(request);
  }

  @GetMapping("/api/batches/{batch}/components")
  @Operation(
      summary = "Principal components of the curves, and Hotelling's T² of every unit",
      description =
          "Left and right deviation side by side, from the units that passed. Units that the"
              + " components were found from have the limit of phase I, all others that of phase II.")
  Components components(
      @Parameter(example = "SW-2647") @PathVariable("batch") String batch,
      @ParameterObject Part part,
      @Parameter(
              example = "25",
              description = "How many units, from the first, the components are found from")
          @RequestParam(name = "baseline", required = false)
          String baseline,
      Locale locale) {
    Read read = read(batch, part);
    int first =
        ChartRequest.blank(baseline)
            ? Integer.MAX_VALUE
            : ChartRequest.number("baseline", baseline, 1);
    return new ComponentFigures(
            new StatisticsWords(texts, locale), read.units(), read.curves().regions(), read.about())
        .of(first);
  }

  @GetMapping("/api/batches/{batch}/stations")
  @Operation(
      summary = "Stations compared",
      description =
          "Level, balance, and each region's mean by one-way analysis of variance, with the"
              + " difference of each two stations, its interval and a sentence.")
  StationComparison stations(
      @Parameter(example = "SW-2647") @PathVariable("batch") String batch,
      @ParameterObject Part part,
      Locale locale) {
    Read read = read(batch, part);
    return new StationFigures(
            new StatisticsWords(texts, locale), read.units(), read.quantities(), read.about())
        .compared();
  }

  private record Read(
      BatchCurves curves, FirstPass units, UnitQuantities quantities, About about) {}

  private Read read(String batch, Part part) {
    BatchCurves curves = selection.of(batch, part);
    FirstPass units = FirstPass.of(curves);
    LimitSet set =
        products
            .limitSet(curves.product(), curves.tuning(), curves.limitSets().get(0))
            .orElseThrow()
            .set();
    return new Read(curves, units, new UnitQuantities(units, set), about(batch, curves, units));
  }

  private static About about(String batch, BatchCurves curves, FirstPass units) {
    List<Instant> times =
        units.units().stream().map(BatchUnit::at).sorted(Comparator.naturalOrder()).toList();
    return new About(
        batch,
        curves.product(),
        curves.tuning(),
        curves.limitSets(),
        units.drawn().size(),
        units.units().stream().map(BatchUnit::station).distinct().sorted().toList(),
        times.get(0),
        times.get(times.size() - 1));
  }
}
