package evenpair.demo.player;

/** The line cannot go on; the message says what was asked of the service and what it answered. */
public class LineStopped extends RuntimeException {
  public LineStopped(String message) {
    super(message);
  }

  public LineStopped(String message, Throwable cause) {
    super(message, cause);
  }
}
