package evenpair.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.access.AccessDeniedHandler;
import org.springframework.security.web.csrf.CsrfException;
import org.springframework.stereotype.Component;

/** Answers callers that are not let through: 401 to who is unknown, 403 to who may not. */
@Component
class Unallowed implements AuthenticationEntryPoint, AccessDeniedHandler {
  private final ProblemDocuments documents;

  Unallowed(ProblemDocuments documents) {
    this.documents = documents;
  }

  /** Nobody is signed in. */
  @Override
  public void commence(
      HttpServletRequest request, HttpServletResponse response, AuthenticationException why)
      throws IOException {
    response.setHeader("WWW-Authenticate", "Bearer realm=\"Evenpair\"");
    boolean token = Cookies.bearer(request).isPresent();
    Refusal refusal =
        token
            ? new Refusal(
                401, "invalid-token", "This station token is not known here, or was revoked.")
            : new Refusal(401, "sign-in-needed", "Sign in first" + forWhom(request) + ".");
    documents.write(naming(refusal, request), request.getLocale(), response);
  }

  /** Somebody is, but may not; or the request may have been forged. */
  @Override
  public void handle(
      HttpServletRequest request, HttpServletResponse response, AccessDeniedException why)
      throws IOException {
    documents.write(refusal(request, why), request.getLocale(), response);
  }

  private static Refusal refusal(HttpServletRequest request, AccessDeniedException why) {
    if (why instanceof CsrfException) {
      return new Refusal(
              403,
              "forged-request",
              "A request that carries a cookie and changes something must send the value of the cookie "
                  + Cookies.CSRF
                  + " as the header "
                  + Cookies.CSRF_HEADER
                  + ".")
          .with("field", Cookies.CSRF_HEADER);
    }
    Object foreign = request.getAttribute(AllowedForManager.FOREIGN);
    if (foreign != null) {
      return foreignStation(foreign.toString());
    }
    return naming(
        new Refusal(403, "not-allowed", "You may not do this" + forWhom(request) + "."), request);
  }

  static Refusal foreignStation(String asked) {
    return new Refusal(
            403,
            "foreign-station",
            "This station's token may not act for station \"" + asked + "\".")
        .with("field", "station");
  }

  private static Refusal naming(Refusal refusal, HttpServletRequest request) {
    List<String> words = words(request);
    return words.isEmpty() ? refusal : refusal.with("choices", words);
  }

  private static String forWhom(HttpServletRequest request) {
    List<String> words = words(request);
    return words.isEmpty() ? "" : ": it is for " + String.join(" or ", words);
  }

  private static List<String> words(HttpServletRequest request) {
    return request.getAttribute(AllowedForManager.NEEDED) instanceof Set<?> needed
        ? needed.stream()
            .map(caller -> caller.toString().toLowerCase(Locale.ROOT))
            .sorted()
            .collect(Collectors.toList())
        : List.of();
  }
}
