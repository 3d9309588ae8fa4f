package evenpair.web;

/** The real table of texts, for tests without Spring. */
public final class TestTexts {
  private TestTexts() {}

  public static Texts real() {
    return new TextTable();
  }
}
