package evenpair.print;

import evenpair.web.Texts;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import net.sf.jasperreports.engine.JRException;
import net.sf.jasperreports.engine.JRParameter;
import net.sf.jasperreports.engine.JasperFillManager;
import net.sf.jasperreports.engine.JasperPrint;
import net.sf.jasperreports.engine.JasperReport;
import net.sf.jasperreports.engine.data.JRMapCollectionDataSource;
import org.springframework.stereotype.Component;

/** Fills the compiled layouts. */
@Component
class JasperPrinter implements Printer, PagesPrinter, FlowPrinter {
  private final CompiledReports layouts = new CompiledReports();
  private final PdfWriting writing = new PdfWriting();
  private final Texts texts;

  JasperPrinter(Texts texts) {
    this.texts = texts;
  }

  @Override
  public byte[] print(Sheet sheet) {
    return pdf(List.of(onePage(sheet)), sheet);
  }

  @Override
  public byte[] printTogether(List<Sheet> sheets) {
    return pdf(sheets.stream().map(this::onePage).toList(), sheets.get(0));
  }

  private JasperPrint onePage(Sheet sheet) {
    for (Density density : Density.values()) {
      JasperPrint filled = fill(sheet, density);
      if (filled.getPages().size() == 1) {
        PlotRoom.widen(filled, layouts.get(sheet.layout(), sheet.paper(), density));
        return filled;
      }
    }
    throw new PageOverflow(sheet.rows().size());
  }

  @Override
  public byte[] printPages(Sheet sheet) {
    return pdf(List.of(fill(sheet, Density.ROOMY)), sheet);
  }

  @Override
  public byte[] print(FlowDocument document) {
    Sheet sheet =
        new Sheet(
            "flow",
            document.paper(),
            document.locale(),
            document.title(),
            document.dated(),
            Map.of(
                "headerLeft", document.headerLeft(),
                "headerRight", document.headerRight(),
                "footer", document.footer()),
            List.of());
    JRMapCollectionDataSource rows =
        new JRMapCollectionDataSource(FlowRows.of(document.sections()));
    return pdf(List.of(fill(sheet, Density.ROOMY, rows)), sheet);
  }

  private byte[] pdf(List<JasperPrint> filled, Sheet sheet) {
    return writing.pdf(filled, sheet, texts.render(sheet.locale(), "paper.language", Map.of()));
  }

  private JasperPrint fill(Sheet sheet, Density density) {
    return fill(sheet, density, rows(sheet.rows()));
  }

  private JasperPrint fill(Sheet sheet, Density density, JRMapCollectionDataSource rows) {
    JasperReport layout = layouts.get(sheet.layout(), sheet.paper(), density);
    try {
      return JasperFillManager.fillReport(layout, parameters(sheet), rows);
    } catch (JRException e) {
      throw new IllegalStateException("cannot fill the layout " + sheet.layout(), e);
    }
  }

  private Map<String, Object> parameters(Sheet sheet) {
    Map<String, Object> parameters = new HashMap<>();
    sheet.values().forEach((name, value) -> parameters.put(name, printable(value, sheet)));
    parameters.put(JRParameter.REPORT_LOCALE, sheet.locale());
    parameters.put(JRParameter.REPORT_RESOURCE_BUNDLE, new TextBundle(texts.table(sheet.locale())));
    return parameters;
  }

  private Object printable(Object value, Sheet sheet) {
    if (value instanceof ResponsePlot plot) {
      return new PlotRenderer(
          plot,
          PlotLabels.from(word -> texts.render(sheet.locale(), "paper.plot." + word, Map.of())));
    }
    if (value instanceof Drawing drawing) {
      return new DrawingRenderer(drawing);
    }
    if (value instanceof Collection<?> rows) {
      return tableOf(rows);
    }
    return value instanceof String text ? Legible.of(text) : value;
  }

  private static JRMapCollectionDataSource tableOf(Collection<?> rows) {
    List<Map<String, String>> table = new ArrayList<>();
    for (Object row : rows) {
      Map<String, String> texts = new HashMap<>();
      ((Map<?, ?>) row).forEach((name, text) -> texts.put((String) name, (String) text));
      table.add(texts);
    }
    return rows(table);
  }

  private static JRMapCollectionDataSource rows(List<Map<String, String>> rows) {
    List<Map<String, ?>> legible = new ArrayList<>();
    for (Map<String, String> row : rows) {
      Map<String, String> shown = new HashMap<>();
      row.forEach((name, text) -> shown.put(name, Legible.of(text)));
      legible.add(shown);
    }
    return new JRMapCollectionDataSource(legible);
  }
}
