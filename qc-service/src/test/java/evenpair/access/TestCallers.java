package evenpair.access;

import evenpair.web.Caller;
import evenpair.web.Cookies;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.core.annotation.Order;
import org.springframework.security.config.Customizer;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.authentication.AnonymousAuthenticationFilter;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Signs the requests of tests in that carry no credentials of their own: as {@link #ENGINEER}, who
 * is operator and engineer. The header {@value #PERSON} names another person with the same roles,
 * {@value #NOBODY} nobody at all; {@value #ROLES} gives other roles, separated by commas. Known to
 * tests only.
 */
@TestConfiguration(proxyBeanMethods = false)
public class TestCallers {
  public static final String PERSON = "X-Test-Person";
  public static final String ROLES = "X-Test-Roles";
  public static final String NOBODY = "nobody";

  /** The name of whoever sends a request without saying who. */
  public static final String ENGINEER = "qe-1";

  /** Signs somebody in for what the test's own thread calls without HTTP. */
  public static void signIn(UUID person, String name) {
    SecurityContext context = SecurityContextHolder.createEmptyContext();
    context.setAuthentication(
        CallerToken.of(
            new CallerToken.KnownPerson(person, name),
            null,
            EnumSet.of(Caller.OPERATOR, Caller.ENGINEER)));
    SecurityContextHolder.setContext(context);
  }

  /** Ends that. */
  public static void signOut() {
    SecurityContextHolder.clearContext();
  }

  @Bean
  @Order(10)
  Customizer<HttpSecurity> testCaller(People people, TransactionTemplate transaction) {
    return http ->
        http.addFilterBefore(new Stamp(people, transaction), AnonymousAuthenticationFilter.class);
  }

  private static final class Stamp extends OncePerRequestFilter {
    private final Map<String, UUID> known = new ConcurrentHashMap<>();
    private final People people;
    private final TransactionTemplate transaction;

    private Stamp(People people, TransactionTemplate transaction) {
      this.people = people;
      this.transaction = transaction;
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
      return NOBODY.equals(request.getHeader(PERSON))
          || Cookies.bearer(request).isPresent()
          || Cookies.read(request, Cookies.SESSION).isPresent()
          || Cookies.read(request, Cookies.STATION).isPresent();
    }

    @Override
    protected void doFilterInternal(
        HttpServletRequest request, HttpServletResponse response, FilterChain chain)
        throws ServletException, IOException {
      String header = request.getHeader(PERSON);
      String name = header == null ? ENGINEER : header;
      SecurityContext context = SecurityContextHolder.createEmptyContext();
      context.setAuthentication(
          CallerToken.of(new CallerToken.KnownPerson(person(name), name), null, roles(request)));
      SecurityContextHolder.setContext(context);
      chain.doFilter(request, response);
    }

    private UUID person(String name) {
      return known.computeIfAbsent(
          name, given -> transaction.execute(status -> people.refer(given)));
    }

    private static Set<Caller> roles(HttpServletRequest request) {
      String roles = request.getHeader(ROLES);
      return roles == null
          ? EnumSet.of(Caller.OPERATOR, Caller.ENGINEER)
          : Roles.read(List.of(roles.split(",")));
    }
  }
}
