package evenpair.print;

import java.io.ByteArrayOutputStream;
import java.util.List;
import net.sf.jasperreports.engine.JRException;
import net.sf.jasperreports.engine.JasperPrint;
import net.sf.jasperreports.export.SimpleExporterInput;
import net.sf.jasperreports.export.SimpleOutputStreamExporterOutput;
import net.sf.jasperreports.pdf.JRPdfExporter;
import net.sf.jasperreports.pdf.SimplePdfExporterConfiguration;
import net.sf.jasperreports.pdf.SimplePdfReportConfiguration;

/** Writes a filled page as PDF. */
final class PdfWriting {
  private static final String PRODUCER = "Evenpair";

  /**
   * @param sheet whose title and date the document gets
   * @param language of the words on the page, as a language tag: it may differ from the reader's,
   *     for whom there is no table
   */
  byte[] pdf(List<JasperPrint> pages, Sheet sheet, String language) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    JRPdfExporter exporter = new JRPdfExporter();
    exporter.setExporterInput(SimpleExporterInput.getInstance(pages));
    exporter.setExporterOutput(new SimpleOutputStreamExporterOutput(bytes));
    exporter.setConfiguration(document(sheet, language));
    exporter.setConfiguration(drawing());
    try {
      exporter.exportReport();
    } catch (JRException e) {
      throw new IllegalStateException("cannot write the PDF of layout " + sheet.layout(), e);
    }
    return FixedMarks.of(bytes.toByteArray(), sheet.dated());
  }

  private static SimplePdfExporterConfiguration document(Sheet sheet, String language) {
    SimplePdfExporterConfiguration document = new SimplePdfExporterConfiguration();
    document.setMetadataTitle(sheet.title());
    document.setMetadataCreator(PRODUCER);
    document.setDisplayMetadataTitle(true);
    document.setTagged(true);
    document.setTagLanguage(language);
    return document;
  }

  /** Words in a plot stay words, in the embedded typeface, instead of outlines. */
  private static SimplePdfReportConfiguration drawing() {
    SimplePdfReportConfiguration drawing = new SimplePdfReportConfiguration();
    drawing.setForceSvgShapes(false);
    return drawing;
  }
}
