package evenpair.web;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A request that cannot be taken, and why. Becomes an RFC 9457 problem document; nothing has been
 * stored when it is thrown. Lower layers that must not know HTTP throw their own exceptions;
 * controllers throw this.
 */
public class Refusal extends RuntimeException {
  private final int status;
  private final String type;
  private Long retryAfterSeconds;
  private final Map<String, Object> members = new LinkedHashMap<>();

  /**
   * @param status 4xx or 507
   * @param type last part of the problem's type, such as {@code unknown-tuning}
   * @param detail a sentence that names the part and what would be right
   */
  public Refusal(int status, String type, String detail) {
    super(detail);
    this.status = status;
    this.type = type;
  }

  /**
   * Adds a further member to the document, such as {@code part}, {@code place}, {@code expected},
   * {@code choices}.
   */
  public Refusal with(String member, Object value) {
    members.put(member, value);
    return this;
  }

  /** Says in the header Retry-After, too, when the same may be tried again. */
  public Refusal retryAfter(Duration wait) {
    retryAfterSeconds = Math.max(1, (wait.toMillis() + 999) / 1000);
    return with("retryAfterSeconds", retryAfterSeconds);
  }

  Long retryAfterSeconds() {
    return retryAfterSeconds;
  }

  public int status() {
    return status;
  }

  public String type() {
    return type;
  }

  public Map<String, Object> members() {
    return members;
  }
}
