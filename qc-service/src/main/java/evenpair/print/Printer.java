package evenpair.print;

/** Turns a document into PDF. */
public interface Printer {
  /**
   * Prints one sheet: one page exactly, every font embedded, plots as vector graphics. A table too
   * long for the page is set more tightly. The same sheet gives the same bytes.
   *
   * @return the bytes of a PDF document
   * @throws PageOverflow if the rows do not fit on one page even when set tightly
   */
  byte[] print(Sheet sheet);
}
