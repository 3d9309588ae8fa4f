package evenpair.print;

import net.sf.jasperreports.engine.JRPrintElement;
import net.sf.jasperreports.engine.JRPrintImage;
import net.sf.jasperreports.engine.JRPrintPage;
import net.sf.jasperreports.engine.JasperPrint;
import net.sf.jasperreports.engine.JasperReport;

/** Gives the plot all the height that the table left: a layout draws it as low as it may be. */
final class PlotRoom {
  private PlotRoom() {}

  static void widen(JasperPrint filled, JasperReport layout) {
    JRPrintPage page = filled.getPages().get(0);
    int footerTop =
        filled.getPageHeight() - layout.getBottomMargin() - layout.getPageFooter().getHeight();
    for (JRPrintElement element : page.getElements()) {
      if (element instanceof JRPrintImage image && image.getRenderer() instanceof PlotRenderer) {
        image.setHeight(footerTop - image.getY());
      }
    }
  }
}
