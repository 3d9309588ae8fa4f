package evenpair.access;

import evenpair.web.Caller;
import evenpair.web.Cookies;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Finds out who calls: by a token in the header, which then counts alone, else by the session's and
 * the station's cookies. Part of the security chain only.
 */
final class CallerFilter extends OncePerRequestFilter {
  private static final Set<String> FILES = Set.of("/js/", "/css/", "/img/", "/webjars/");

  private final StationTokens tokens;
  private final Sessions sessions;
  private final AccountStore accounts;

  CallerFilter(StationTokens tokens, Sessions sessions, AccountStore accounts) {
    this.tokens = tokens;
    this.sessions = sessions;
    this.accounts = accounts;
  }

  /** The screens' files are for everyone. */
  @Override
  protected boolean shouldNotFilter(HttpServletRequest request) {
    return FILES.stream().anyMatch(request.getRequestURI()::startsWith);
  }

  @Override
  protected void doFilterInternal(
      HttpServletRequest request, HttpServletResponse response, FilterChain chain)
      throws ServletException, IOException {
    find(request)
        .ifPresent(
            caller -> {
              SecurityContext context = SecurityContextHolder.createEmptyContext();
              context.setAuthentication(caller);
              SecurityContextHolder.setContext(context);
            });
    chain.doFilter(request, response);
  }

  private Optional<CallerToken> find(HttpServletRequest request) {
    Optional<String> bearer = Cookies.bearer(request);
    if (bearer.isPresent()) {
      return bearer
          .flatMap(tokens::stationOf)
          .map(station -> CallerToken.of(null, station, EnumSet.noneOf(Caller.class)));
    }
    String station = Cookies.read(request, Cookies.STATION).flatMap(tokens::stationOf).orElse(null);
    Optional<CallerToken> person =
        sessions
            .find(request)
            .flatMap(
                known ->
                    accounts
                        .find(known.person())
                        .filter(AccountStore.Person::maySignIn)
                        .map(found -> caller(found, known.means(), station)));
    return person.or(
        () ->
            Optional.ofNullable(station)
                .map(name -> CallerToken.of(null, name, EnumSet.noneOf(Caller.class))));
  }

  private static CallerToken caller(
      AccountStore.Person person, Sessions.Means means, String station) {
    EnumSet<Caller> roles = EnumSet.noneOf(Caller.class);
    roles.addAll(person.roles());
    if (means == Sessions.Means.BADGE) {
      roles.retainAll(Set.of(Caller.OPERATOR));
    }
    return CallerToken.of(new CallerToken.KnownPerson(person.ref(), person.name()), station, roles);
  }
}
