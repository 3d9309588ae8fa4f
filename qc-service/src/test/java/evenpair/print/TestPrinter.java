package evenpair.print;

import evenpair.web.Texts;

/** The real printer, for tests without Spring. */
public final class TestPrinter {
  private TestPrinter() {}

  public static Printer with(Texts texts) {
    return new JasperPrinter(texts);
  }

  public static PagesPrinter pagesWith(Texts texts) {
    return new JasperPrinter(texts);
  }

  public static FlowPrinter flowWith(Texts texts) {
    return new JasperPrinter(texts);
  }
}
