package evenpair.print;

/** Turns a document of any number of pages into PDF. */
public interface PagesPrinter {
  /**
   * Prints a sheet whose table may go on on further pages: every font embedded, drawings as vector
   * graphics. The same sheet gives the same bytes.
   *
   * @return the bytes of a PDF document
   */
  byte[] printPages(Sheet sheet);
}
