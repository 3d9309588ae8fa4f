package evenpair.print;

/** A document that has to be one page needs more room than a page has. */
public class PageOverflow extends RuntimeException {
  private final int rows;

  PageOverflow(int rows) {
    super("a table of " + rows + " rows does not fit on one page");
    this.rows = rows;
  }

  /**
   * @return how many rows the table has
   */
  public int rows() {
    return rows;
  }
}
