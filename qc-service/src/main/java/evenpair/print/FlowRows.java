package evenpair.print;

import evenpair.print.FlowDocument.Block;
import evenpair.print.FlowDocument.Figure;
import evenpair.print.FlowDocument.Note;
import evenpair.print.FlowDocument.Paragraph;
import evenpair.print.FlowDocument.Section;
import evenpair.print.FlowDocument.Table;
import evenpair.print.FlowTable.Line;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A document's blocks as rows of the layout {@code flow}, one below the other. */
final class FlowRows {
  /** The layout has a band for a table row of this many lines; longer ones are cut into several. */
  static final int MOST_LINES = 6;

  private final List<Map<String, ?>> rows = new ArrayList<>();
  private int tables;

  /** Rises with every section that begins on a page of its own. */
  private int begun;

  private FlowRows() {}

  static List<Map<String, ?>> of(List<Section> sections) {
    FlowRows flow = new FlowRows();
    for (int i = 0; i < sections.size(); i++) {
      Section section = sections.get(i);
      flow.begun += section.newPage() ? 1 : 0;
      for (Block block : section.blocks()) {
        flow.add(i, section, block);
      }
    }
    return flow.rows;
  }

  private void add(int number, Section section, Block block) {
    if (block instanceof Paragraph paragraph) {
      put(number, section, Map.of("kind", "text", "text", Legible.of(paragraph.text())));
    } else if (block instanceof Note note) {
      put(number, section, Map.of("kind", "note", "text", Legible.of(note.text())));
    } else if (block instanceof Figure figure) {
      put(
          number,
          section,
          Map.of(
              "kind",
              "figure-" + figure.height().points(),
              "drawing",
              new DrawingRenderer(figure.drawing())));
    } else if (block instanceof Table table) {
      table(number, section, table);
    }
  }

  private void table(int number, Section section, Table table) {
    FlowTable setting = new FlowTable(table.columns());
    Line head = setting.head();
    tables++;
    for (List<String> texts : table.rows()) {
      Line row = setting.row(texts);
      if (row.lines() > MOST_LINES) {
        throw new IllegalArgumentException(
            "a table row of " + row.lines() + " lines: make its text a paragraph");
      }
      put(
          number,
          section,
          Map.of(
              "kind",
              "row-" + row.lines(),
              "drawing",
              new DrawingRenderer(row.drawing()),
              "head",
              new DrawingRenderer(head.drawing()),
              "headLines",
              head.lines(),
              "table",
              Integer.toString(tables)));
    }
  }

  private void put(int number, Section section, Map<String, ?> block) {
    Map<String, Object> row = new HashMap<>(block);
    row.put("section", Integer.toString(number));
    row.put("heading", section.heading() == null ? null : Legible.of(section.heading()));
    row.put("page", begun);
    row.putIfAbsent("table", "none-" + tables);
    rows.add(row);
  }
}
