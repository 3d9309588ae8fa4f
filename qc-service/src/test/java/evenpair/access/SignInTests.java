package evenpair.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.delete;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;

import evenpair.web.Caller;
import evenpair.web.Cookies;
import jakarta.servlet.http.Cookie;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockHttpServletResponse;

class SignInTests extends AccessTest {
  @Nested
  class ByNameAndPassword {
    @Test
    void tellsWhoSignedInAndWithWhichRoles() throws Exception {
      String name = unique("marsh");
      person(name, Caller.ENGINEER, Caller.OPERATOR);

      Cookie[] session = session(name);

      assertThat(whoIs(session))
          .contains("\"name\":\"" + name + "\"", "[\"operator\",\"engineer\"]", "\"password\"");
      assertThat(answer(get("/api/products").cookie(session)).getStatus()).isEqualTo(200);
    }

    /** Byte for byte the same answer, so that nobody learns which names there are. */
    @Test
    void saysTheSameForAWrongNameAWrongPasswordAndOneWhoMayNotSignIn() throws Exception {
      String name = unique("marsh");
      String away = unique("away");
      person(name, Caller.OPERATOR);
      accounts.setRoles(person(away, Caller.OPERATOR), EnumSetOf.OPERATOR, false);

      MockHttpServletResponse wrong = signIn(name, "not the password at all");

      assertThat(wrong.getStatus()).isEqualTo(401);
      assertThat(wrong.getCookie(Cookies.SESSION)).isNull();
      for (MockHttpServletResponse other :
          new MockHttpServletResponse[] {
            signIn(unique("no-such"), PASSWORD), signIn(away, PASSWORD), signIn("", "")
          }) {
        assertThat(other.getStatus()).isEqualTo(401);
        assertThat(other.getContentAsString()).isEqualTo(wrong.getContentAsString());
      }
    }

    @Test
    void keepsNoPasswordInTheDatabase() {
      String name = unique("marsh");
      String hash = accounts.find(person(name, Caller.OPERATOR)).orElseThrow().hash();

      assertThat(hash).startsWith("{bcrypt}").doesNotContain(PASSWORD);
    }
  }

  @Nested
  class Attempts {
    /** Four are free; the fifth failure makes the next one wait. */
    @Test
    void areSlowedByNameWhetherItExistsOrNot() throws Exception {
      String name = unique("marsh");
      person(name, Caller.OPERATOR);
      for (String tried : new String[] {name, unique("no-such")}) {
        for (int n = 0; n < 5; n++) {
          assertThat(signIn(tried, "wrong password " + n).getStatus()).isEqualTo(401);
        }
        MockHttpServletResponse slowed = signIn(tried, PASSWORD);
        assertThat(slowed.getStatus()).as(tried).isEqualTo(429);
        assertThat(slowed.getHeader("Retry-After")).isEqualTo("1");
      }
    }

    @Test
    void areSlowedByAddressWhicheverNamesAreTried() throws Exception {
      for (int n = 0; n < 31; n++) {
        assertThat(signIn(unique("guess"), "wrong").getStatus()).isEqualTo(401);
      }
      assertThat(signIn(unique("guess"), "wrong").getStatus()).isEqualTo(429);
    }

    @Test
    void areForgottenOnceOneSucceeds() throws Exception {
      String name = unique("marsh");
      person(name, Caller.OPERATOR);
      for (int round = 0; round < 3; round++) {
        for (int n = 0; n < 3; n++) {
          signIn(name, "wrong");
        }
        assertThat(signIn(name, PASSWORD).getStatus()).isEqualTo(200);
      }
    }

    @Test
    void areKeptWithoutTheNamesThatWereTried() throws Exception {
      String name = unique("typed-my-password-here");
      signIn(name, "wrong");

      assertThat(
              jdbc.sql("select count(*) from sign_in_attempt where subject_sha256 = ?")
                  .param(Secrets.sha256(name))
                  .query(Integer.class)
                  .single())
          .isEqualTo(1);
      assertThat(
              jdbc.sql("select string_agg(sign_in_attempt::text, ' ') from sign_in_attempt")
                  .query(String.class)
                  .single())
          .doesNotContain(name);
    }
  }

  @Nested
  class ASession {
    private final String name = unique("marsh");

    @Test
    void hasACookieThatNoScriptReadsAndNoOtherSiteSends() throws Exception {
      person(name, Caller.OPERATOR);
      String header =
          signIn(name, PASSWORD).getHeaders("Set-Cookie").stream()
              .filter(cookie -> cookie.startsWith(Cookies.SESSION))
              .findFirst()
              .orElseThrow();

      assertThat(header).contains("HttpOnly", "SameSite=Strict", "Path=/").doesNotContain("Secure");
    }

    @Test
    void isSecureWhereTheConnectionIs() throws Exception {
      person(name, Caller.OPERATOR);
      MockHttpServletResponse answer =
          answer(
              json(
                      post("/api/session"),
                      "{\"name\":\"%s\",\"password\":\"%s\"}".formatted(name, PASSWORD))
                  .secure(true));

      assertThat(answer.getHeaders("Set-Cookie")).isNotEmpty().allMatch(c -> c.contains("Secure"));
    }

    @Test
    void neverKeepsAnIdThatWasThereBefore() throws Exception {
      person(name, Caller.OPERATOR);
      Cookie[] planted = session(name);

      MockHttpServletResponse again =
          answer(
              own(
                  json(
                      post("/api/session"),
                      "{\"name\":\"%s\",\"password\":\"%s\"}".formatted(name, PASSWORD)),
                  planted));

      assertThat(again.getCookie(Cookies.SESSION).getValue()).isNotEqualTo(planted[0].getValue());
      assertThat(whoIs(planted[0])).contains("\"person\":null");
    }

    @Test
    void isNotMadeByAnIdThatSomebodyMadeUp() throws Exception {
      Cookie made = new Cookie(Cookies.SESSION, "MDE5YWI4YzYtMmYxMC03ZDNlLTliMWMtNWE0ZDdjMWUwZjIy");

      assertThat(whoIs(made)).contains("\"person\":null");
    }

    @Test
    void endsBySigningOut() throws Exception {
      person(name, Caller.OPERATOR);
      Cookie[] session = session(name);

      assertThat(answer(own(delete("/api/session"), session)).getStatus()).isEqualTo(204);
      assertThat(whoIs(session)).contains("\"person\":null");
    }

    /** The row as it stands once nobody has used it for an hour and a minute. */
    @Test
    void endsAfterAnHourWithoutARequest() throws Exception {
      var person = person(name, Caller.OPERATOR);
      Cookie[] session = session(name);
      int changed =
          jdbc.sql(
                  "update spring_session set last_access_time = last_access_time - 3660000, expiry_time = expiry_time - 3660000"
                      + " where principal_name = ?")
              .param(person.toString())
              .update();

      assertThat(changed).isEqualTo(1);
      assertThat(whoIs(session)).contains("\"person\":null");
    }

    @Test
    void countsWithWhatThePersonMayDoNowNotThen() throws Exception {
      var person = person(name, Caller.ADMINISTRATOR);
      Cookie[] session = session(name);
      assertThat(answer(get("/api/people").cookie(session)).getStatus()).isEqualTo(200);

      accounts.setRoles(person, EnumSetOf.OPERATOR, true);
      assertThat(answer(get("/api/people").cookie(session)).getStatus()).isEqualTo(403);

      accounts.setRoles(person, EnumSetOf.OPERATOR, false);
      assertThat(answer(get("/api/people").cookie(session)).getStatus()).isEqualTo(401);
    }
  }

  @Nested
  class ForgedRequests {
    private final String name = unique("marsh");

    @Test
    void areRefusedWithoutTheHeaderWithAWrongOneAndPassWithIt() throws Exception {
      person(name, Caller.OPERATOR);
      Cookie[] session = session(name);
      String body = "{\"old\":\"x\",\"password\":\"y\"}";

      MockHttpServletResponse without =
          answer(json(put("/api/session/password"), body).cookie(session));
      assertThat(without.getStatus()).isEqualTo(403);
      assertThat(without.getContentAsString()).contains("/problems/forged-request");
      assertThat(
              answer(
                      json(put("/api/session/password"), body)
                          .header(Cookies.CSRF_HEADER, "guessed")
                          .cookie(session))
                  .getContentAsString())
          .contains("/problems/forged-request");
      assertThat(
              answer(own(json(put("/api/session/password"), body), session)).getContentAsString())
          .contains("/problems/wrong-password");
    }

    /** Where a form of another site could put it. */
    @Test
    void areRefusedWithTheTokenAsAParameter() throws Exception {
      person(name, Caller.OPERATOR);
      Cookie[] session = session(name);

      assertThat(
              answer(delete("/api/session").param("_csrf", session[1].getValue()).cookie(session))
                  .getStatus())
          .isEqualTo(403);
    }
  }

  @Nested
  class OnesOwnPassword {
    @Test
    void isChangedAndEndsTheOtherSessions() throws Exception {
      String name = unique("marsh");
      person(name, Caller.OPERATOR);
      Cookie[] here = session(name);
      Cookie[] elsewhere = session(name);

      MockHttpServletResponse changed =
          answer(
              own(
                  json(
                      put("/api/session/password"),
                      "{\"old\":\"%s\",\"password\":\"another long password\"}"
                          .formatted(PASSWORD)),
                  here));

      assertThat(changed.getStatus()).as(changed.getContentAsString()).isEqualTo(200);
      assertThat(whoIs(changed.getCookie(Cookies.SESSION))).contains(name);
      assertThat(whoIs(elsewhere)).contains("\"person\":null");
      assertThat(signIn(name, PASSWORD).getStatus()).isEqualTo(401);
      assertThat(signIn(name, "another long password").getStatus()).isEqualTo(200);
    }

    @Test
    void mustHaveTwelveCharacters() throws Exception {
      String name = unique("marsh");
      person(name, Caller.OPERATOR);

      assertThat(
              answer(
                      own(
                          json(
                              put("/api/session/password"),
                              "{\"old\":\"%s\",\"password\":\"eleven char\"}".formatted(PASSWORD)),
                          session(name)))
                  .getContentAsString())
          .contains("/problems/invalid-field", "at least 12 characters");
    }
  }

  /** Sets of one role. */
  private static final class EnumSetOf {
    static final java.util.Set<Caller> OPERATOR = java.util.EnumSet.of(Caller.OPERATOR);
  }
}
