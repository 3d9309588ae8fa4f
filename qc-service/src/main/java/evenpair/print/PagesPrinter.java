package evenpair.print;

import java.util.List;

/** Turns a document of any number of pages into PDF. */
public interface PagesPrinter {
  /**
   * Prints a sheet whose table may go on on further pages: every font embedded, drawings as vector
   * graphics. The same sheet gives the same bytes.
   *
   * @return the bytes of a PDF document
   */
  byte[] printPages(Sheet sheet);

  /**
   * Prints sheets of one page each one behind the other, as one document: its typefaces are
   * embedded once for all of them. The document has the first sheet's title and date.
   *
   * @param sheets one or more, of one language
   * @throws PageOverflow if the rows of one of them do not fit on one page
   */
  byte[] printTogether(List<Sheet> sheets);
}
