package evenpair.print;

import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import net.sf.jasperreports.engine.JRException;
import net.sf.jasperreports.engine.JasperReport;
import net.sf.jasperreports.engine.util.JRLoader;

/**
 * The page layouts as the build compiled them; each is read once and may be filled by many threads.
 */
final class CompiledReports {
  private final Map<String, JasperReport> loaded = new ConcurrentHashMap<>();

  /**
   * @param paper null for a layout that is drawn for one size only
   */
  static String fileName(String report, PaperSize paper, Density density) {
    String size = paper == null ? "own-size" : paper.word();
    return report + "-" + size + "-" + density.word() + ".jasper";
  }

  /**
   * @throws IllegalStateException if the build did not compile that layout
   */
  JasperReport get(String report, PaperSize paper, Density density) {
    return loaded.computeIfAbsent(
        "/print/" + fileName(report, paper, density), CompiledReports::load);
  }

  private static JasperReport load(String resource) {
    try (InputStream in = CompiledReports.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException(
            "no compiled layout "
                + resource
                + ": the build compiles it in its phase process-classes");
      }
      return (JasperReport) JRLoader.loadObject(in);
    } catch (IOException | JRException e) {
      throw new IllegalStateException("cannot read the compiled layout " + resource, e);
    }
  }
}
