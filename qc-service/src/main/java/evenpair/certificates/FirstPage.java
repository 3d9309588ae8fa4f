package evenpair.certificates;

import evenpair.print.Mark;
import evenpair.print.PaperSize;
import evenpair.print.Printer;
import evenpair.print.ResponsePlot;
import evenpair.print.Sheet;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/**
 * Prints one page for nobody as soon as the service runs: loading layouts, fonts and the print
 * engine takes seconds, which the first certificate of the day should not wait for. A failure is
 * told in the log and hinders nothing.
 */
@Component
@ConditionalOnProperty(name = "evenpair.print.first-page", matchIfMissing = true)
class FirstPage {
  private static final Logger LOG = LoggerFactory.getLogger(FirstPage.class);

  private final Printer printer;
  private final Clock clock;

  FirstPage(Printer printer, Clock clock) {
    this.printer = printer;
    this.clock = clock;
  }

  @EventListener(ApplicationReadyEvent.class)
  void printInTheBackground() {
    Thread thread = new Thread(this::print, "first-page");
    thread.setDaemon(true);
    thread.setPriority(Thread.MIN_PRIORITY);
    thread.start();
  }

  /**
   * @return whether it worked
   */
  boolean print() {
    try {
      byte[] pdf = printer.print(sheet());
      LOG.debug("the print engine is ready, its first page has {} bytes", pdf.length);
      return true;
    } catch (RuntimeException e) {
      LOG.warn("the print engine is not ready: certificates may fail", e);
      return false;
    }
  }

  private Sheet sheet() {
    return new Sheet(
        CertificateSheet.LAYOUT,
        PaperSize.A4,
        Locale.ENGLISH,
        "",
        clock.instant(),
        Map.of("mark", Mark.PASS, "plot", plot(), "caption", "a", "statement", "a", "code", "a"),
        List.of(Map.of("name", "a", "leftValue", "0")));
  }

  private static ResponsePlot plot() {
    double[] hz = {20, 200, 2000, 20_000};
    double[] flat = new double[hz.length];
    double[] limit = new double[hz.length];
    Arrays.fill(limit, 1);
    return new ResponsePlot(
        hz,
        flat,
        flat,
        flat,
        flat,
        limit,
        flat,
        limit,
        List.of(new ResponsePlot.PlotRegion("a", 20, 20_000, false)),
        100,
        10_000);
  }
}
