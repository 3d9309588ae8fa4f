package evenpair.captures;

/** A file that cannot be decoded. Becomes a 4xx problem document that names the part. */
public class UnreadableCapture extends RuntimeException {
  private final String place;
  private final String expected;

  /**
   * @param problem what is wrong, one sentence
   * @param place where in the file ({@code chunk 'fmt '}, {@code line 14, column 2}), or an empty
   *     string
   * @param expected what would be right
   */
  public UnreadableCapture(String problem, String place, String expected) {
    super(problem);
    this.place = place;
    this.expected = expected;
  }

  public String place() {
    return place;
  }

  public String expected() {
    return expected;
  }
}
