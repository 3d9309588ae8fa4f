package evenpair.certificates;

import evenpair.print.ResponsePlot;
import evenpair.print.Sheet;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What the public sees of a sealed record: taken from the sheet that the certificate is printed
 * from, so that it shows what the certificate shows, in the same numbers, and nothing else.
 *
 * @param facts the certificate's words by their place on it
 * @param rows the certificate's table, row by row
 * @param plot the certificate's two plots
 */
record PublicRecord(
    @Schema(example = "7K2M-9QDX-0V4T-RB8H-3ZJN-5") String code,
    @Schema(description = "PASS, or FAIL for a tuning that was not passed") String verdict,
    Map<String, String> facts,
    List<Map<String, String>> rows,
    Plot plot) {

  static PublicRecord of(Sheet sheet, String code) {
    Map<String, String> facts = new TreeMap<>();
    sheet
        .values()
        .forEach(
            (place, value) -> {
              if (value instanceof String text && !place.equals("record")) {
                facts.put(place, text);
              }
            });
    return new PublicRecord(
        code, "PASS", facts, sheet.rows(), Plot.of((ResponsePlot) sheet.values().get("plot")));
  }

  @Schema(
      description =
          "dB SPL, moved by the channel's own level as on the certificate; difference and match limit"
              + " in dB. Null where there is none. Rounded to 0.01 dB")
  record Plot(
      double[] frequencyHz,
      Double[] left,
      Double[] right,
      Double[] golden,
      Double[] lower,
      Double[] upper,
      Double[] difference,
      Double[] matchLimit,
      List<Region> regions,
      double specifiedFromHz,
      double specifiedToHz) {
    static Plot of(ResponsePlot plot) {
      return new Plot(
          plot.frequencyHz(),
          rounded(plot.left()),
          rounded(plot.right()),
          rounded(plot.golden()),
          rounded(plot.lower()),
          rounded(plot.upper()),
          rounded(plot.difference()),
          rounded(plot.matchLimit()),
          plot.regions().stream().map(r -> new Region(r.name(), r.fromHz(), r.toHz())).toList(),
          plot.specifiedFromHz(),
          plot.specifiedToHz());
    }

    private static Double[] rounded(double[] curve) {
      Double[] rounded = new Double[curve.length];
      for (int i = 0; i < curve.length; i++) {
        rounded[i] = Double.isNaN(curve[i]) ? null : Math.rint(curve[i] * 100) / 100;
      }
      return rounded;
    }
  }

  record Region(String name, double fromHz, double toHz) {}
}
