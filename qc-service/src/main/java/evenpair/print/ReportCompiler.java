package evenpair.print;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import net.sf.jasperreports.engine.JRBand;
import net.sf.jasperreports.engine.JRElement;
import net.sf.jasperreports.engine.JRException;
import net.sf.jasperreports.engine.JasperCompileManager;
import net.sf.jasperreports.engine.design.JRDesignBand;
import net.sf.jasperreports.engine.design.JRDesignElement;
import net.sf.jasperreports.engine.design.JRDesignTextElement;
import net.sf.jasperreports.engine.design.JasperDesign;
import net.sf.jasperreports.engine.xml.JRXmlLoader;

/**
 * Run by the build, never by the service: compiles every page layout once for each paper size and
 * density, so that the service needs no compiler. A layout is drawn for A4 with a fixed width of
 * print; here it gets the margins that centre it on the sheet.
 */
final class ReportCompiler {
  private static final String LAYOUT = ".jrxml";

  /** Folder of layouts that are drawn for one size only: labels and slips. */
  private static final String OWN_SIZE = "own-size";

  private ReportCompiler() {}

  /**
   * @param args the folder of layouts; the folder to write to
   */
  public static void main(String[] args) throws IOException, JRException {
    Path into = Files.createDirectories(Path.of(args[1]));
    for (Path layout : layouts(Path.of(args[0]))) {
      String name = layout.getFileName().toString().replace(LAYOUT, "");
      for (PaperSize paper : PaperSize.values()) {
        for (Density density : Density.values()) {
          compile(
              layout, paper, density, into.resolve(CompiledReports.fileName(name, paper, density)));
        }
      }
    }
    for (Path layout : layouts(Path.of(args[0], OWN_SIZE))) {
      String name = layout.getFileName().toString().replace(LAYOUT, "");
      compile(
          layout,
          null,
          Density.ROOMY,
          into.resolve(CompiledReports.fileName(name, null, Density.ROOMY)));
    }
  }

  private static List<Path> layouts(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(LAYOUT)).sorted().toList();
    }
  }

  private static void compile(Path layout, PaperSize paper, Density density, Path file)
      throws IOException, JRException {
    try (InputStream in = Files.newInputStream(layout);
        OutputStream out = Files.newOutputStream(file)) {
      JasperDesign design = JRXmlLoader.load(in);
      if (paper != null) {
        fit(design, paper);
      }
      tighten(design.getDetailSection().getBands(), density);
      JasperCompileManager.compileReportToStream(design, out);
    }
  }

  private static void fit(JasperDesign design, PaperSize paper) {
    int around = paper.width() - design.getColumnWidth();
    design.setPageWidth(paper.width());
    design.setPageHeight(paper.height());
    design.setLeftMargin(around / 2);
    design.setRightMargin(around - around / 2);
    design.setTopMargin(paper.topMargin());
    design.setBottomMargin(paper.bottomMargin());
  }

  private static void tighten(JRBand[] bands, Density density) {
    for (JRBand band : bands) {
      ((JRDesignBand) band).setHeight((int) Math.round(density.scaled(band.getHeight())));
      for (JRElement element : band.getElements()) {
        tighten((JRDesignElement) element, density);
      }
    }
  }

  private static void tighten(JRDesignElement element, Density density) {
    element.setY((int) Math.floor(density.scaled(element.getY())));
    element.setHeight(Math.max(1, (int) Math.floor(density.scaled(element.getHeight()))));
    if (element instanceof JRDesignTextElement text) {
      text.setFontSize((float) density.scaledType(text.getFontSize()));
    }
  }
}
