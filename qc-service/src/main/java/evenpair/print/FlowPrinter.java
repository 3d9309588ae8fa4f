package evenpair.print;

/** Turns a document of several pages into PDF. */
public interface FlowPrinter {
  /**
   * Every font embedded, drawings as vector graphics. The same document gives the same bytes.
   *
   * @return the bytes of a PDF document
   */
  byte[] print(FlowDocument document);
}
