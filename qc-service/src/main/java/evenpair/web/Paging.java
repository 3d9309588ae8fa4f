package evenpair.web;

/**
 * Which part of a list is asked for.
 *
 * @param after cursor of the last item already seen; null or empty for the beginning
 * @param limit items wanted, 1 to {@value #MOST}
 */
public record Paging(String after, int limit) {
  public static final int MOST = 500;
  public static final int USUAL = 100;

  /**
   * @param limit null for {@value #USUAL}
   * @throws Refusal 400 if the limit is out of range
   */
  public static Paging of(String after, Integer limit) {
    int wanted = limit == null ? USUAL : limit;
    if (wanted < 1 || wanted > MOST) {
      throw new Refusal(
              400, "invalid-parameter", "\"limit\" must be 1 to " + MOST + ", was " + wanted + ".")
          .with("field", "limit")
          .with("expected", "1 to " + MOST);
    }
    return new Paging(after == null || after.isEmpty() ? null : after, wanted);
  }

  /**
   * @return how many rows to read: one more than wanted tells whether there is a next part
   */
  public int rowsToRead() {
    return limit + 1;
  }
}
