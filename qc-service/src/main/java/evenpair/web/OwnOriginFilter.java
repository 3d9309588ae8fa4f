package evenpair.web;

import evenpair.web.tls.TlsSettings;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Keeps other web sites out, before anybody asks who is signed in. A page of another site that is
 * open in a browser can send requests here; two things give it away: the host name that it used (a
 * name of its own that it points at this machine), and the origin that the browser states with
 * every request that could change something.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 100)
class OwnOriginFilter extends OncePerRequestFilter {
  private static final Set<String> NAMES =
      Set.of("localhost", "[::1]", "::1", "[0:0:0:0:0:0:0:1]", "0:0:0:0:0:0:0:1");
  private static final Set<String> SAFE = Set.of("GET", "HEAD", "OPTIONS");
  private static final Set<String> OWN_SITE = Set.of("same-origin", "none");

  private final ProblemDocuments documents;
  private final TlsSettings tls;

  OwnOriginFilter(ProblemDocuments documents, TlsSettings tls) {
    this.documents = documents;
    this.tls = tls;
  }

  @Override
  protected void doFilterInternal(
      HttpServletRequest request, HttpServletResponse response, FilterChain chain)
      throws ServletException, IOException {
    Optional<Refusal> refusal = foreignHost(request).or(() -> foreignOrigin(request));
    if (refusal.isPresent()) {
      documents.write(refusal.get(), request.getLocale(), response);
    } else {
      chain.doFilter(request, response);
    }
  }

  private Optional<Refusal> foreignHost(HttpServletRequest request) {
    String host = request.getServerName().toLowerCase(Locale.ROOT);
    if (NAMES.contains(host) || host.matches("127(\\.\\d{1,3}){3}") || tls.answersTo(host)) {
      return Optional.empty();
    }
    return Optional.of(
        new Refusal(
            421,
            "foreign-host",
            "This service does not answer to \""
                + host
                + "\": name it in evenpair.host-names if it is this machine."));
  }

  private static Optional<Refusal> foreignOrigin(HttpServletRequest request) {
    if (SAFE.contains(request.getMethod())) {
      return Optional.empty();
    }
    String origin = request.getHeader("Origin");
    String site = request.getHeader("Sec-Fetch-Site");
    boolean own =
        origin == null
            ? site == null || OWN_SITE.contains(site)
            : origin.equalsIgnoreCase(request.getScheme() + "://" + request.getHeader("Host"));
    if (own) {
      return Optional.empty();
    }
    return Optional.of(
        new Refusal(403, "foreign-origin", "A page of another site may not change anything here."));
  }
}
