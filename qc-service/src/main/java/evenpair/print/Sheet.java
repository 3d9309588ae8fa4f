package evenpair.print;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * One document to print.
 *
 * @param layout name of the page layout, such as {@code certificate}
 * @param paper sheet size; null for a layout that has a size of its own, such as a label
 * @param locale language of the layout's own words
 * @param title the document's title, shown by readers
 * @param dated the document's date: the record's own, never the time of printing, so that one
 *     record always prints alike
 * @param values what stands in the layout's places: texts, a {@link ResponsePlot}, any {@link
 *     Drawing}, or a list of rows
 * @param rows rows of the layout's main table
 */
public record Sheet(
    String layout,
    PaperSize paper,
    Locale locale,
    String title,
    Instant dated,
    Map<String, Object> values,
    List<Map<String, String>> rows) {
  public Sheet {
    values = Map.copyOf(values);
    rows = List.copyOf(rows);
  }
}
