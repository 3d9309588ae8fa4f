package evenpair.access;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.EvenpairDatabaseTest;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.core.annotation.AnnotatedElementUtils;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.security.web.FilterChainProxy;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.mvc.method.RequestMappingInfo;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

/**
 * Walks every endpoint that exists with every kind of caller, up to where the handler would take
 * over: refused requests end there, their body unread.
 */
@EvenpairDatabaseTest
class EveryEndpointTests {
  private static final String OWN = "walk-own";
  private static final String FOREIGN = "walk-foreign";

  @Autowired
  @Qualifier("requestMappingHandlerMapping")
  private RequestMappingHandlerMapping mapping;

  @Autowired private FilterChainProxy security;
  @Autowired private StationTokens tokens;
  @Autowired private JdbcClient jdbc;

  /** Who walks. */
  enum Walker {
    NOBODY,
    UNKNOWN_TOKEN,
    OPERATOR,
    ENGINEER,
    ADMINISTRATOR,
    STATION,
    FOREIGN_STATION
  }

  /** One address that a handler answers at. */
  private record Endpoint(
      String method, String path, RequestMappingInfo info, Set<Caller> callers) {
    @Override
    public String toString() {
      return method + " " + path;
    }
  }

  private String own;
  private String foreign;

  @BeforeEach
  void makeStations() {
    own = token(OWN);
    foreign = token(FOREIGN);
  }

  private String token(String station) {
    jdbc.sql(
            "insert into station (id, name, created_at) values (?, ?, now()) on conflict do nothing")
        .params(UUID.randomUUID(), station)
        .update();
    return tokens.make(station, "walker", null).secret();
  }

  /** Handlers of libraries are looked at one by one below. */
  private List<Endpoint> endpoints() {
    List<Endpoint> all = new ArrayList<>();
    mapping
        .getHandlerMethods()
        .forEach(
            (info, handler) -> {
              if (handler.getBeanType().getName().startsWith("evenpair.")) {
                add(all, info, handler);
              }
            });
    return all;
  }

  private static void add(List<Endpoint> all, RequestMappingInfo info, HandlerMethod handler) {
    Set<RequestMethod> methods = info.getMethodsCondition().getMethods();
    for (String path : info.getPatternValues()) {
      for (RequestMethod method : methods.isEmpty() ? Set.of(RequestMethod.GET) : methods) {
        all.add(new Endpoint(method.name(), path, info, declared(handler)));
      }
    }
  }

  /** Read here on its own, so that a wrong reading in the service is noticed. */
  private static Set<Caller> declared(HandlerMethod handler) {
    AllowedFor method =
        AnnotatedElementUtils.findMergedAnnotation(handler.getMethod(), AllowedFor.class);
    AllowedFor type =
        AnnotatedElementUtils.findMergedAnnotation(handler.getBeanType(), AllowedFor.class);
    AllowedFor counts = method == null ? type : method;
    return counts == null ? Set.of() : EnumSet.copyOf(List.of(counts.value()));
  }

  @Test
  void everyHandlerSaysWhomItIsFor() {
    assertThat(endpoints()).hasSizeGreaterThan(40);
    assertThat(endpoints().stream().filter(endpoint -> endpoint.callers().isEmpty())).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(Walker.class)
  void everyCallerGetsExactlyWhatIsDeclared(Walker walker) throws Exception {
    Map<String, String> wrong = new TreeMap<>();
    for (Endpoint endpoint : endpoints()) {
      int expected = expected(endpoint, walker);
      int status = walk(endpoint, walker);
      if (status != expected) {
        wrong.put(endpoint.toString(), "expected " + expected + ", was " + status);
      }
    }
    assertThat(wrong).as("%s", walker).isEmpty();
  }

  /** 200 stands for: the handler would have been called. */
  private static int expected(Endpoint endpoint, Walker walker) {
    Set<Caller> callers = endpoint.callers();
    if (callers.contains(Caller.ANYONE)) {
      return 200;
    }
    return switch (walker) {
      case NOBODY, UNKNOWN_TOKEN -> 401;
      case OPERATOR -> callers.contains(Caller.OPERATOR) ? 200 : 403;
      case ENGINEER -> callers.contains(Caller.ENGINEER) ? 200 : 403;
      case ADMINISTRATOR -> callers.contains(Caller.ADMINISTRATOR) ? 200 : 403;
      case STATION -> callers.contains(Caller.STATION) ? 200 : 403;
      case FOREIGN_STATION ->
          callers.contains(Caller.STATION) && !endpoint.path().contains("{station}") ? 200 : 403;
    };
  }

  private int walk(Endpoint endpoint, Walker walker) throws Exception {
    String path =
        endpoint
            .path()
            .replace("{station}", OWN)
            .replaceAll("\\{[^}]+}", "019ab8c6-2f10-7d3e-9b1c-5a4d7c1e0f22");
    MockHttpServletRequest request = new UnreadBody(endpoint.method(), path);
    endpoint.info().getConsumesCondition().getConsumableMediaTypes().stream()
        .findFirst()
        .ifPresent(type -> request.setContentType(type.toString()));
    endpoint.info().getProducesCondition().getProducibleMediaTypes().stream()
        .findFirst()
        .ifPresent(type -> request.addHeader("Accept", type.toString()));
    introduce(request, walker);
    MockHttpServletResponse response = new MockHttpServletResponse();
    boolean[] through = {false};
    security.doFilter(request, response, (same, answer) -> through[0] = true);
    if (!through[0]) {
      assertThat(response.getContentType())
          .as("%s", endpoint)
          .isEqualTo(MediaType.APPLICATION_PROBLEM_JSON_VALUE);
    }
    return through[0] ? 200 : response.getStatus();
  }

  private void introduce(MockHttpServletRequest request, Walker walker) {
    switch (walker) {
      case NOBODY -> request.addHeader(TestCallers.PERSON, TestCallers.NOBODY);
      case UNKNOWN_TOKEN -> request.addHeader("Authorization", "Bearer " + Secrets.token());
      case STATION -> request.addHeader("Authorization", "Bearer " + own);
      case FOREIGN_STATION -> request.addHeader("Authorization", "Bearer " + foreign);
      default -> {
        request.addHeader(TestCallers.PERSON, "walker-" + walker);
        request.addHeader(TestCallers.ROLES, walker.name().toLowerCase(java.util.Locale.ROOT));
      }
    }
  }

  /** What the libraries bring: health for everyone, the rest for those who are known. */
  @Test
  void handlersOfLibrariesAreForThoseWhoAreKnown() throws Exception {
    for (String path : List.of("/actuator/info", "/v3/api-docs")) {
      assertThat(status(path, Walker.NOBODY)).as(path).isEqualTo(401);
      assertThat(status(path, Walker.ENGINEER)).as(path).isEqualTo(200);
    }
    assertThat(status("/actuator/health", Walker.NOBODY)).isEqualTo(200);
    assertThat(status("/actuator", Walker.NOBODY)).isEqualTo(401);
    assertThat(status("/actuator", Walker.ADMINISTRATOR)).isEqualTo(403);
  }

  private int status(String path, Walker walker) throws Exception {
    RequestMappingInfo plain = RequestMappingInfo.paths(path).build();
    return walk(new Endpoint("GET", path, plain, Set.of()), walker);
  }

  /** Fails the test if anybody looks into the body, or for parameters that may stand there. */
  private static final class UnreadBody extends MockHttpServletRequest {
    private UnreadBody(String method, String path) {
      super(method, path);
    }

    @Override
    public jakarta.servlet.ServletInputStream getInputStream() {
      throw new AssertionError("the body of " + getMethod() + " " + getRequestURI() + " was read");
    }

    @Override
    public java.util.Collection<jakarta.servlet.http.Part> getParts() {
      throw new AssertionError("the body of " + getMethod() + " " + getRequestURI() + " was read");
    }
  }
}
