package evenpair.web;

import jakarta.servlet.DispatcherType;
import jakarta.servlet.http.HttpServletRequest;
import java.util.EnumSet;
import java.util.Set;
import java.util.function.Supplier;
import org.springframework.security.authorization.AuthorizationDecision;
import org.springframework.security.authorization.AuthorizationManager;
import org.springframework.security.authorization.AuthorizationResult;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.web.access.intercept.RequestAuthorizationContext;
import org.springframework.stereotype.Component;

/**
 * Lets a request through if {@link AllowedFor} of its handler names one of the caller's roles. A
 * caller who is let through as a station only may act for that station alone. Runs before the body
 * is read.
 */
@Component
class AllowedForManager implements AuthorizationManager<RequestAuthorizationContext> {
  /** Request attribute for the answer: the callers that would have been let through. */
  static final String NEEDED = AllowedForManager.class.getName() + ".needed";

  /** Request attribute for the answer: the station that a foreign station's token asked for. */
  static final String FOREIGN = AllowedForManager.class.getName() + ".foreign";

  private static final String STATION = "station";

  private final HandlerLookup handlers;

  AllowedForManager(HandlerLookup handlers) {
    this.handlers = handlers;
  }

  @Override
  public AuthorizationResult authorize(
      Supplier<? extends Authentication> authentication, RequestAuthorizationContext context) {
    HttpServletRequest request = context.getRequest();
    boolean allowed =
        request.getDispatcherType() != DispatcherType.REQUEST
            || handlers
                .find(request)
                .map(found -> allowed(found, authentication.get(), request))
                .orElse(true);
    return new AuthorizationDecision(allowed);
  }

  private static boolean allowed(
      HandlerLookup.Found found, Authentication caller, HttpServletRequest request) {
    Set<Caller> declared = DeclaredCallers.of(found.handler(), pathOf(request));
    if (declared.contains(Caller.ANYONE)) {
      return true;
    }
    Set<Caller> granted = roles(caller);
    granted.retainAll(declared);
    if (granted.isEmpty()) {
      request.setAttribute(NEEDED, declared);
      return false;
    }
    String asked = found.variables().get(STATION);
    boolean stationOnly = granted.equals(EnumSet.of(Caller.STATION));
    if (stationOnly && asked != null && !asked.equals(stationOf(caller))) {
      request.setAttribute(FOREIGN, asked);
      return false;
    }
    return true;
  }

  /** As sent: what is written in another way than it is listed is not listed. */
  private static String pathOf(HttpServletRequest request) {
    return request.getRequestURI().substring(request.getContextPath().length());
  }

  private static String stationOf(Authentication caller) {
    return caller instanceof FromStation from ? from.station().orElse(null) : null;
  }

  private static Set<Caller> roles(Authentication caller) {
    Set<Caller> roles = EnumSet.noneOf(Caller.class);
    for (Caller role : Caller.values()) {
      for (GrantedAuthority authority : caller.getAuthorities()) {
        if (role.name().equals(authority.getAuthority())) {
          roles.add(role);
        }
      }
    }
    return roles;
  }
}
