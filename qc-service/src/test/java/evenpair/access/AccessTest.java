package evenpair.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import evenpair.EvenpairDatabaseTest;
import evenpair.web.Caller;
import evenpair.web.Cookies;
import jakarta.servlet.http.Cookie;
import java.util.EnumSet;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.AbstractMockHttpServletRequestBuilder;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

/** A browser with its cookies, an address of its own for each test, and people to sign in as. */
@EvenpairDatabaseTest
abstract class AccessTest {
  static final String PASSWORD = "four words and a number 7";
  private static final AtomicInteger COUNT = new AtomicInteger();

  @Autowired MockMvc mvc;
  @Autowired JdbcClient jdbc;
  @Autowired AccountStore accounts;
  @Autowired StationTokens tokens;

  private final String address = address(COUNT.incrementAndGet());

  private static String address(int n) {
    return "10.9." + n / 250 + "." + (1 + n % 250);
  }

  static String unique(String word) {
    return word + "-" + COUNT.incrementAndGet();
  }

  UUID person(String name, Caller first, Caller... more) {
    return accounts.open(name, PASSWORD, EnumSet.of(first, more));
  }

  String station() {
    String name = unique("gate");
    jdbc.sql("insert into station (id, name, created_at) values (?, ?, now())")
        .params(UUID.randomUUID(), name)
        .update();
    return name;
  }

  /** Nobody, from this test's address. */
  <T extends AbstractMockHttpServletRequestBuilder<T>> T from(T request) {
    return request
        .header(TestCallers.PERSON, TestCallers.NOBODY)
        .with(
            built -> {
              built.setRemoteAddr(address);
              return built;
            });
  }

  <T extends AbstractMockHttpServletRequestBuilder<T>> MockHttpServletResponse answer(T request)
      throws Exception {
    return mvc.perform(from(request)).andReturn().getResponse();
  }

  static MockHttpServletRequestBuilder json(MockHttpServletRequestBuilder request, String body) {
    return request.contentType(MediaType.APPLICATION_JSON).content(body);
  }

  MockHttpServletResponse signIn(String name, String password, Cookie... cookies) throws Exception {
    MockHttpServletRequestBuilder request =
        json(
            post("/api/session"),
            "{\"name\":\"%s\",\"password\":\"%s\"}".formatted(name, password));
    return answer(cookies.length == 0 ? request : request.cookie(cookies));
  }

  /** The cookies of a session that has just begun: its own, and the one against forged requests. */
  Cookie[] session(String name) throws Exception {
    MockHttpServletResponse answer = signIn(name, PASSWORD);
    assertThat(answer.getStatus()).as(answer.getContentAsString()).isEqualTo(200);
    return new Cookie[] {answer.getCookie(Cookies.SESSION), answer.getCookie(Cookies.CSRF)};
  }

  /** As our own script sends it. */
  static MockHttpServletRequestBuilder own(
      MockHttpServletRequestBuilder request, Cookie... cookies) {
    for (Cookie cookie : cookies) {
      if (cookie.getName().equals(Cookies.CSRF)) {
        request.header(Cookies.CSRF_HEADER, cookie.getValue());
      }
    }
    return request.cookie(cookies);
  }

  /** Whom the service takes the bearer of these cookies for. */
  String whoIs(Cookie... cookies) throws Exception {
    return answer(get("/api/session").cookie(cookies)).getContentAsString();
  }
}
