package evenpair.web;

import jakarta.servlet.http.Cookie;
import jakarta.servlet.http.HttpServletRequest;
import java.util.Arrays;
import java.util.Optional;

/** The cookies that this service sets, by name. */
public final class Cookies {
  /** A person's session. */
  public static final String SESSION = "evenpair-session";

  /** A station's token, set by enrolment. */
  public static final String STATION = "evenpair-station";

  /** The token against forged requests, which our own script reads and sends back as a header. */
  public static final String CSRF = "evenpair-csrf";

  /** The header that carries it back. */
  public static final String CSRF_HEADER = "X-Evenpair-CSRF";

  private Cookies() {}

  /**
   * @return the value of the cookie of that name that the request carries
   */
  public static Optional<String> read(HttpServletRequest request, String name) {
    Cookie[] all = request.getCookies();
    return all == null
        ? Optional.empty()
        : Arrays.stream(all)
            .filter(cookie -> cookie.getName().equals(name))
            .map(Cookie::getValue)
            .findFirst();
  }

  /**
   * @return the token behind {@code Authorization: Bearer}, if the request has that header
   */
  public static Optional<String> bearer(HttpServletRequest request) {
    String header = request.getHeader("Authorization");
    return header != null && header.regionMatches(true, 0, "Bearer ", 0, 7)
        ? Optional.of(header.substring(7).strip())
        : Optional.empty();
  }
}
