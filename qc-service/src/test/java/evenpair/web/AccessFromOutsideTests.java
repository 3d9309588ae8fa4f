package evenpair.web;

import static org.hamcrest.Matchers.containsString;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.cookie;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import evenpair.EvenpairDatabaseTest;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

@EvenpairDatabaseTest
class AccessFromOutsideTests {
  @Autowired MockMvc mvc;

  private static MockHttpServletRequestBuilder at(
      String host, MockHttpServletRequestBuilder request) {
    return request
        .header("Host", host + ":8080")
        .with(
            built -> {
              built.setServerName(host);
              return built;
            });
  }

  @Nested
  class HostNames {
    @ParameterizedTest
    @ValueSource(strings = {"localhost", "LOCALHOST", "127.0.0.1", "127.0.0.53", "[::1]"})
    void ofThisMachineAreAnswered(String host) throws Exception {
      mvc.perform(at(host, get("/api/about"))).andExpect(status().isOk());
    }

    @ParameterizedTest
    @ValueSource(
        strings = {
          "evil.example",
          "localhost.evil.example",
          "127.0.0.1.evil.example",
          "192.168.0.7"
        })
    void ofOthersAreRefusedEvenToRead(String host) throws Exception {
      mvc.perform(at(host, get("/api/about")))
          .andExpect(status().isMisdirectedRequest())
          .andExpect(content().contentType("application/problem+json"))
          .andExpect(jsonPath("$.type").value("/problems/foreign-host"));
    }
  }

  /** A POST that nothing takes is 404 or 405 once it has passed. */
  @Nested
  class ChangesFromAnotherSite {
    @ParameterizedTest
    @CsvSource({"http://evil.example", "http://localhost:9999", "https://localhost:8080", "null"})
    void areRefusedByTheirOrigin(String origin) throws Exception {
      mvc.perform(at("localhost", post("/api/about")).header("Origin", origin))
          .andExpect(status().isForbidden())
          .andExpect(jsonPath("$.type").value("/problems/foreign-origin"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"cross-site", "same-site"})
    void areRefusedByWhatTheBrowserSaysOfTheSite(String site) throws Exception {
      mvc.perform(at("localhost", post("/api/about")).header("Sec-Fetch-Site", site))
          .andExpect(status().isForbidden());
    }

    @Test
    void passFromTheServicesOwnPages() throws Exception {
      mvc.perform(
              at("localhost", post("/api/about"))
                  .header("Origin", "http://localhost:8080")
                  .header("Sec-Fetch-Site", "same-origin"))
          .andExpect(status().isMethodNotAllowed());
    }

    @Test
    void passFromAProgramThatIsNoBrowser() throws Exception {
      mvc.perform(at("localhost", post("/api/about"))).andExpect(status().isMethodNotAllowed());
    }
  }

  @Nested
  class EveryAnswer {
    @Test
    void carriesTheStrictPolicyAndBeginsNoSession() throws Exception {
      mvc.perform(get("/api/about"))
          .andExpect(
              header()
                  .string(
                      "Content-Security-Policy",
                      containsString("script-src 'self'; style-src 'self';")))
          .andExpect(
              header().string("Content-Security-Policy", containsString("frame-ancestors 'none'")))
          .andExpect(header().string("X-Content-Type-Options", "nosniff"))
          .andExpect(header().string("Cross-Origin-Resource-Policy", "same-origin"))
          .andExpect(cookie().doesNotExist(Cookies.SESSION))
          .andExpect(cookie().doesNotExist("JSESSIONID"));
    }

    @Test
    void asksForNoLogin() throws Exception {
      mvc.perform(get("/login")).andExpect(status().isNotFound());
    }
  }
}
