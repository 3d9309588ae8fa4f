package evenpair.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.delete;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import com.jayway.jsonpath.JsonPath;
import evenpair.web.Caller;
import evenpair.web.Cookies;
import jakarta.servlet.http.Cookie;
import java.nio.charset.StandardCharsets;
import java.security.spec.KeySpec;
import java.time.Clock;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.PBEKeySpec;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockPart;
import org.springframework.test.web.servlet.request.AbstractMockHttpServletRequestBuilder;

class StationAccessTests extends AccessTest {
  private Cookie[] administrator() throws Exception {
    String name = unique("admin");
    person(name, Caller.ADMINISTRATOR);
    return session(name);
  }

  private MockHttpServletResponse make(String station, Cookie... administrator) throws Exception {
    return answer(
        own(
            json(post("/api/stations/" + station + "/tokens"), "{\"name\":\"rig\"}"),
            administrator));
  }

  private static <T extends AbstractMockHttpServletRequestBuilder<T>> T with(
      String token, T request) {
    return request.header("Authorization", "Bearer " + token);
  }

  @Nested
  class AToken {
    @Test
    void isShownOnceAndKeptAsItsDigestOnly() throws Exception {
      String station = station();
      Cookie[] administrator = administrator();

      MockHttpServletResponse made = make(station, administrator);
      String token = JsonPath.read(made.getContentAsString(), "$.token");

      assertThat(made.getStatus()).isEqualTo(201);
      assertThat(Base64.getUrlDecoder().decode(token)).hasSize(32);
      assertThat(made.getHeader("Cache-Control")).isEqualTo("no-store");
      assertThat(
              answer(get("/api/stations/" + station + "/tokens").cookie(administrator))
                  .getContentAsString())
          .contains("\"rig\"")
          .doesNotContain(token);
      assertThat(
              jdbc.sql("select station_token::text from station_token where station = ?")
                  .param(station)
                  .query(String.class)
                  .single())
          .doesNotContain(token);
    }

    @Test
    void opensNothingOnceItIsRevoked() throws Exception {
      String station = station();
      Cookie[] administrator = administrator();
      String made = make(station, administrator).getContentAsString();
      String token = JsonPath.read(made, "$.token");
      assertThat(answer(with(token, get("/api/products"))).getStatus()).isEqualTo(200);

      String path = "/api/stations/" + station + "/tokens/" + JsonPath.read(made, "$.id");
      assertThat(answer(own(delete(path), administrator)).getStatus()).isEqualTo(204);

      MockHttpServletResponse refused = answer(with(token, get("/api/products")));
      assertThat(refused.getStatus()).isEqualTo(401);
      assertThat(refused.getContentAsString()).contains("/problems/invalid-token");
      assertThat(refused.getHeader("WWW-Authenticate")).startsWith("Bearer");
    }

    @Test
    void countsAloneBesideASession() throws Exception {
      String token = tokens.make(station(), "rig", null).secret();
      Cookie[] administrator = administrator();

      assertThat(answer(with(token, get("/api/people")).cookie(administrator)).getStatus())
          .isEqualTo(403);
    }

    @Test
    void isOfAStationThatThereIs() throws Exception {
      assertThat(make("no-such-station", administrator()).getStatus()).isEqualTo(404);
    }

    @Test
    void sendsInspectionsForItsOwnStationOnly() throws Exception {
      String station = station();
      String token = tokens.make(station, "rig", null).secret();
      String other = station();

      assertThat(inspect(token, other).getContentAsString())
          .contains("/problems/foreign-station", "\"expected\":\"" + station + "\"");
      assertThat(inspect(token, other).getStatus()).isEqualTo(403);
      assertThat(inspect(token, station).getContentAsString())
          .contains("/problems/unknown-product");
    }

    private MockHttpServletResponse inspect(String token, String station) throws Exception {
      String inspection =
          """
          {"serial":"X-1","batch":"B-1","product":"none-such","tuning":"plain","station":"%s","operator":"op-17"}"""
              .formatted(station);
      return answer(
          with(
              token,
              multipart("/api/inspections")
                  .part(
                      new MockPart("inspection", inspection.getBytes(StandardCharsets.UTF_8)),
                      new MockPart("left", "l.wav", new byte[] {1}),
                      new MockPart("right", "r.wav", new byte[] {2}))));
    }
  }

  @Nested
  class AnEnrolledBrowser {
    private MockHttpServletResponse enrol(String station) throws Exception {
      return answer(
          own(
              json(post("/api/stations/" + station + "/enrolment"), "{\"name\":\"bench PC\"}"),
              administrator()));
    }

    @Test
    void hasACookieThatNoScriptReadsAndOutlivesSessions() throws Exception {
      String station = station();
      MockHttpServletResponse enrolled = enrol(station);
      String header = enrolled.getHeader("Set-Cookie");

      assertThat(header)
          .contains(Cookies.STATION + "=", "HttpOnly", "SameSite=Strict", "Path=/")
          .contains("Max-Age=" + Duration.ofDays(400).toSeconds());
      assertThat(whoIs(enrolled.getCookie(Cookies.STATION)))
          .contains("\"station\":\"" + station + "\"", "\"person\":null");
    }

    @Test
    void needsTheHeaderAgainstForgedRequestsToo() throws Exception {
      Cookie cookie = enrol(station()).getCookie(Cookies.STATION);

      assertThat(
              answer(json(post("/api/session/badge"), "{\"badge\":\"1\"}").cookie(cookie))
                  .getContentAsString())
          .contains("/problems/forged-request");
    }

    @Test
    void isMadeByTheTokenItselfToo() throws Exception {
      String station = station();
      String token = tokens.make(station, "bench PC", null).secret();

      MockHttpServletResponse enrolled =
          answer(
              with(
                  token,
                  json(
                      post("/api/stations/" + station + "/enrolment"), "{\"name\":\"bench PC\"}")));

      assertThat(enrolled.getCookie(Cookies.STATION).getValue()).isEqualTo(token);
    }

    @Test
    void makesNoFurtherTokensByItself() throws Exception {
      String station = station();
      Cookie cookie = enrol(station).getCookie(Cookies.STATION);
      Cookie csrf = answer(get("/api/session").cookie(cookie)).getCookie(Cookies.CSRF);

      assertThat(
              answer(
                      own(
                          json(
                              post("/api/stations/" + station + "/enrolment"),
                              "{\"name\":\"one more\"}"),
                          cookie,
                          csrf))
                  .getStatus())
          .isEqualTo(403);
    }
  }

  @Nested
  class ABadge {
    private final String badge = unique("7003");
    private final String name = unique("op");

    private MockHttpServletResponse scan(String token, String scanned) throws Exception {
      return answer(
          with(token, json(post("/api/session/badge"), "{\"badge\":\"" + scanned + "\"}")));
    }

    @Test
    void opensWhatAnOperatorMayDoAndNoMore() throws Exception {
      var person = person(name, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR);
      accounts.setBadge(person, badge);
      String token = tokens.make(station(), "bench", null).secret();

      MockHttpServletResponse scanned = scan(token, badge);

      assertThat(scanned.getContentAsString()).contains(name, "[\"operator\"]", "\"badge\"");
      Cookie session = scanned.getCookie(Cookies.SESSION);
      assertThat(answer(get("/api/products").cookie(session)).getStatus()).isEqualTo(200);
      assertThat(answer(get("/api/people").cookie(session)).getStatus()).isEqualTo(403);
    }

    @Test
    void isWorthNothingAwayFromAStation() throws Exception {
      accounts.setBadge(person(name, Caller.OPERATOR), badge);

      assertThat(
              answer(json(post("/api/session/badge"), "{\"badge\":\"" + badge + "\"}")).getStatus())
          .isEqualTo(401);
    }

    @Test
    void ofSomebodyWhoIsNoOperatorIsNotKnown() throws Exception {
      accounts.setBadge(person(name, Caller.ENGINEER), badge);
      String token = tokens.make(station(), "bench", null).secret();

      assertThat(scan(token, badge).getStatus()).isEqualTo(401);
      assertThat(scan(token, unique("none")).getStatus()).isEqualTo(401);
    }

    @Test
    void isGuessedSlowly() throws Exception {
      String token = tokens.make(station(), "bench", null).secret();
      for (int n = 0; n < 9; n++) {
        assertThat(scan(token, "guess-" + n).getStatus()).isEqualTo(401);
      }
      assertThat(scan(token, "guess-9").getStatus()).isEqualTo(429);
    }

    /** The reader is the JDK's own PBKDF2, which shares no line with ours. */
    @Test
    void isKnownAtTheBenchAsASlowDigestThatABrowserCanCheck() throws Exception {
      accounts.setBadge(person(name, Caller.OPERATOR), badge);
      String station = station();
      String token = tokens.make(station, "bench", null).secret();
      assertThat(scan(token, badge).getStatus()).isEqualTo(200);

      String known = knownBadges(station, token);

      assertThat(known).doesNotContain(badge);
      byte[] salt = Base64.getDecoder().decode(JsonPath.<String>read(known, "$.salt"));
      int iterations = JsonPath.read(known, "$.iterations");
      KeySpec spec = new PBEKeySpec(badge.toCharArray(), salt, iterations, 256);
      byte[] derived =
          SecretKeyFactory.getInstance("PBKDF2WithHmacSHA256").generateSecret(spec).getEncoded();
      assertThat(JsonPath.<List<String>>read(known, "$.items[*].derived"))
          .containsExactly(Base64.getEncoder().encodeToString(derived));
      assertThat(JsonPath.<String>read(known, "$.items[0].name")).isEqualTo(name);
    }

    @Test
    void isForgottenAtTheBenchAfterTwelveHoursAndOnceItIsTakenAway() throws Exception {
      var person = person(name, Caller.OPERATOR);
      accounts.setBadge(person, badge);
      String station = station();
      String token = tokens.make(station, "bench", null).secret();
      scan(token, badge);
      assertThat(knownBadges(station, token)).contains(name);

      jdbc.sql("update known_badge set signed_in_at = ? where station = ?")
          .params(
              Clock.systemUTC()
                  .instant()
                  .minus(Duration.ofHours(12).plusSeconds(1))
                  .atOffset(java.time.ZoneOffset.UTC),
              station)
          .update();
      assertThat(knownBadges(station, token)).doesNotContain(name);

      scan(token, badge);
      assertThat(knownBadges(station, token)).contains(name);
      accounts.setRoles(person, java.util.EnumSet.of(Caller.OPERATOR), false);
      assertThat(knownBadges(station, token)).doesNotContain(name);
    }

    private String knownBadges(String station, String token) throws Exception {
      return answer(with(token, get("/api/stations/" + station + "/known-badges")))
          .getContentAsString();
    }
  }
}
