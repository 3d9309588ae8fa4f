package evenpair.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerExecutionChain;
import org.springframework.web.servlet.HandlerMapping;
import org.springframework.web.util.ServletRequestPathUtils;

/**
 * Finds what will handle a request before it is handled, as the dispatcher does, without reading
 * the body and without leaving a trace in the request.
 */
@Component
class HandlerLookup {
  private final ObjectProvider<HandlerMapping> mappings;

  HandlerLookup(ObjectProvider<HandlerMapping> mappings) {
    this.mappings = mappings;
  }

  /**
   * What will handle a request.
   *
   * @param handler a {@link HandlerMethod} for everything that is written as a controller
   * @param variables of the address, by name
   */
  record Found(Object handler, Map<String, String> variables) {}

  /**
   * @return empty where nothing will handle it: no such address, or one that takes other methods
   */
  Optional<Found> find(HttpServletRequest request) {
    Probe probe = new Probe(request);
    ServletRequestPathUtils.parseAndCache(probe);
    for (HandlerMapping mapping : mappings.orderedStream().toList()) {
      try {
        HandlerExecutionChain chain = mapping.getHandler(probe);
        if (chain != null) {
          return Optional.of(new Found(chain.getHandler(), probe.variables()));
        }
      } catch (Exception refused) {
        // The dispatcher meets the same and answers 405, 406 or 415: no handler runs.
        return Optional.empty();
      }
    }
    return Optional.empty();
  }

  /** The request with attributes of its own. */
  private static final class Probe extends HttpServletRequestWrapper {
    private final Map<String, Object> own = new HashMap<>();

    private Probe(HttpServletRequest request) {
      super(request);
    }

    @SuppressWarnings("unchecked")
    private Map<String, String> variables() {
      Object found = own.get(HandlerMapping.URI_TEMPLATE_VARIABLES_ATTRIBUTE);
      return found == null ? Map.of() : Map.copyOf((Map<String, String>) found);
    }

    @Override
    public Object getAttribute(String name) {
      return own.containsKey(name) ? own.get(name) : super.getAttribute(name);
    }

    @Override
    public void setAttribute(String name, Object value) {
      own.put(name, value);
    }

    @Override
    public void removeAttribute(String name) {
      own.put(name, null);
    }
  }
}
