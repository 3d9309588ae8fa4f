package evenpair.web;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.core.annotation.AnnotatedElementUtils;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.mvc.ParameterizableViewController;
import org.springframework.web.servlet.resource.ResourceHttpRequestHandler;

/**
 * Whom a handler is declared for. What declares nothing is for nobody; only what the libraries
 * bring is listed here by its address.
 */
final class DeclaredCallers {
  private static final Set<Caller> PUBLIC = Set.of(Caller.ANYONE);
  private static final Set<Caller> ALL_KNOWN =
      Set.of(Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR);

  /** Handlers of libraries, by where they answer. */
  private static final Map<String, Set<Caller>> OF_LIBRARIES =
      Map.of(
          "/actuator/health", PUBLIC,
          "/actuator/health/liveness", PUBLIC,
          "/actuator/health/readiness", PUBLIC,
          "/actuator/info", ALL_KNOWN,
          "/actuator/prometheus", Set.of(Caller.ADMINISTRATOR),
          "/v3/api-docs", ALL_KNOWN,
          "/v3/api-docs.yaml", ALL_KNOWN);

  private DeclaredCallers() {}

  /**
   * @param path of the request, without the context
   * @return empty set for what nobody may call
   */
  static Set<Caller> of(Object handler, String path) {
    if (handler instanceof HandlerMethod method) {
      return annotated(method).orElseGet(() -> ofLibrary(method, path));
    }
    boolean file =
        handler instanceof ResourceHttpRequestHandler
            || handler instanceof ParameterizableViewController;
    return file ? PUBLIC : Set.of();
  }

  private static Optional<Set<Caller>> annotated(HandlerMethod method) {
    AllowedFor own = method.getMethodAnnotation(AllowedFor.class);
    AllowedFor counts =
        own != null
            ? own
            : AnnotatedElementUtils.findMergedAnnotation(method.getBeanType(), AllowedFor.class);
    return Optional.ofNullable(counts).map(allowed -> Set.of(allowed.value()));
  }

  private static Set<Caller> ofLibrary(HandlerMethod method, String path) {
    String type = method.getMethod().getDeclaringClass().getName();
    boolean library =
        type.startsWith("org.springframework.boot.") || type.startsWith("org.springdoc.");
    return library ? OF_LIBRARIES.getOrDefault(path, Set.of()) : Set.of();
  }
}
