package evenpair.web;

/**
 * The service must not start like this. Printed as two plain sentences instead of a stack trace.
 */
public class StartRefused extends RuntimeException {
  private final String action;

  /**
   * @param problem what is wrong, a whole sentence
   * @param action what to do about it, a whole sentence
   */
  public StartRefused(String problem, String action) {
    this(problem, action, null);
  }

  public StartRefused(String problem, String action, Throwable cause) {
    super(problem, cause);
    this.action = action;
  }

  public String action() {
    return action;
  }
}
