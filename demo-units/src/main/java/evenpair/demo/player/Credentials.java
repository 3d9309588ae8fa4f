package evenpair.demo.player;

import evenpair.web.Cookies;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;

/** What a client says of itself with each request: nothing, a station's token, or a session. */
final class Credentials {
  private final String token;
  private String session;
  private String csrf;

  private Credentials(String token) {
    this.token = token;
  }

  static Credentials none() {
    return new Credentials(null);
  }

  static Credentials ofStation(String token) {
    return new Credentials(token);
  }

  synchronized void put(HttpRequest.Builder request) {
    if (token != null) {
      request.setHeader("Authorization", "Bearer " + token);
    }
    if (session != null) {
      request.setHeader(
          "Cookie", Cookies.SESSION + "=" + session + "; " + Cookies.CSRF + "=" + csrf);
      request.setHeader(Cookies.CSRF_HEADER, csrf);
    }
  }

  /** Keeps the cookies of a sign-in. */
  synchronized void take(HttpResponse<?> answer) {
    for (String cookie : answer.headers().allValues("Set-Cookie")) {
      String[] pair = cookie.split(";", 2)[0].split("=", 2);
      if (pair[0].equals(Cookies.SESSION)) {
        session = pair[1];
      } else if (pair[0].equals(Cookies.CSRF)) {
        csrf = pair[1];
      }
    }
  }

  synchronized void forget() {
    session = null;
    csrf = null;
  }
}
