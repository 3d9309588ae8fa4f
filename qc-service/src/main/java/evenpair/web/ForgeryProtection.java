package evenpair.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Set;
import java.util.function.Supplier;
import org.springframework.http.HttpMethod;
import org.springframework.security.web.csrf.CookieCsrfTokenRepository;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.security.web.csrf.CsrfTokenRequestHandler;
import org.springframework.security.web.util.matcher.RequestMatcher;

/**
 * Guards requests that a browser sends with a cookie by itself: only our own script can read the
 * second cookie and repeat it as a header. Requests with a token in their header are never sent by
 * a browser on its own and need none.
 */
final class ForgeryProtection implements CsrfTokenRequestHandler, RequestMatcher {
  private static final Set<String> SAFE =
      Set.of(
          HttpMethod.GET.name(),
          HttpMethod.HEAD.name(),
          HttpMethod.OPTIONS.name(),
          HttpMethod.TRACE.name());

  static CookieCsrfTokenRepository repository() {
    CookieCsrfTokenRepository repository = CookieCsrfTokenRepository.withHttpOnlyFalse();
    repository.setCookieName(Cookies.CSRF);
    repository.setHeaderName(Cookies.CSRF_HEADER);
    repository.setCookiePath("/");
    repository.setCookieCustomizer(cookie -> cookie.sameSite("Strict"));
    return repository;
  }

  /** Whether the request needs the header. */
  @Override
  public boolean matches(HttpServletRequest request) {
    return !SAFE.contains(request.getMethod())
        && Cookies.bearer(request).isEmpty()
        && (Cookies.read(request, Cookies.SESSION).isPresent()
            || Cookies.read(request, Cookies.STATION).isPresent());
  }

  /** Hands the cookie to browsers; programs with a token have no use for it. */
  @Override
  public void handle(
      HttpServletRequest request, HttpServletResponse response, Supplier<CsrfToken> token) {
    if (Cookies.bearer(request).isEmpty()) {
      token.get().getToken();
    }
  }

  /** From the header alone: a parameter would have to be looked for in the body. */
  @Override
  public String resolveCsrfTokenValue(HttpServletRequest request, CsrfToken token) {
    return request.getHeader(token.getHeaderName());
  }
}
