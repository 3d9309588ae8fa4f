package evenpair.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Collection;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.support.StaticListableBeanFactory;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.authority.AuthorityUtils;
import org.springframework.security.web.access.intercept.RequestAuthorizationContext;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerExecutionChain;
import org.springframework.web.servlet.HandlerMapping;

class AllowedForManagerTests {
  static class Silent {
    public void handle() {}

    @AllowedFor(Caller.ENGINEER)
    public void forEngineers() {}
  }

  @AllowedFor(Caller.ANYONE)
  static class Open {
    public void handle() {}

    @AllowedFor(Caller.ADMINISTRATOR)
    public void forAdministrators() {}
  }

  private static boolean allowed(Object handler, Caller... roles) {
    StaticListableBeanFactory beans = new StaticListableBeanFactory();
    HandlerMapping mapping = request -> new HandlerExecutionChain(handler);
    beans.addBean("mapping", mapping);
    AllowedForManager manager =
        new AllowedForManager(new HandlerLookup(beans.getBeanProvider(HandlerMapping.class)));
    Collection<GrantedAuthority> authorities =
        AuthorityUtils.createAuthorityList(
            Arrays.stream(roles).map(Caller::name).toArray(String[]::new));
    Authentication caller = new UsernamePasswordAuthenticationToken("somebody", "", authorities);
    return manager
        .authorize(
            () -> caller,
            new RequestAuthorizationContext(new MockHttpServletRequest("GET", "/actuator/health")))
        .isGranted();
  }

  private static HandlerMethod method(Object bean, String name) throws NoSuchMethodException {
    return new HandlerMethod(bean, name);
  }

  /** Even at the address of a handler that is open, and even to a caller with every role. */
  @Test
  void whatDeclaresNothingIsClosedToEverybody() throws Exception {
    assertThat(allowed(method(new Silent(), "handle"), Caller.values())).isFalse();
    assertThat(allowed((Runnable) () -> {}, Caller.values())).isFalse();
  }

  @Test
  void theSameHandlerIsOpenOnceItDeclaresSo() throws Exception {
    assertThat(allowed(method(new Silent(), "forEngineers"), Caller.ENGINEER)).isTrue();
    assertThat(allowed(method(new Silent(), "forEngineers"), Caller.OPERATOR)).isFalse();
    assertThat(allowed(method(new Open(), "handle"))).isTrue();
  }

  @Test
  void theMethodsOwnWordCountsBeforeItsControllers() throws Exception {
    assertThat(allowed(method(new Open(), "forAdministrators"))).isFalse();
    assertThat(
            Stream.of(Caller.OPERATOR, Caller.ENGINEER, Caller.STATION)
                .anyMatch(
                    role -> {
                      try {
                        return allowed(method(new Open(), "forAdministrators"), role);
                      } catch (NoSuchMethodException e) {
                        throw new AssertionError(e);
                      }
                    }))
        .isFalse();
    assertThat(allowed(method(new Open(), "forAdministrators"), Caller.ADMINISTRATOR)).isTrue();
  }
}
