package evenpair.web;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.EvenpairDatabaseTest;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.web.server.LocalServerPort;

@EvenpairDatabaseTest
class StartTests {
  @LocalServerPort int port;

  private final HttpClient client = HttpClient.newHttpClient();

  private HttpResponse<String> get(String path) throws Exception {
    URI uri = URI.create("http://127.0.0.1:" + port + path);
    return client.send(HttpRequest.newBuilder(uri).build(), HttpResponse.BodyHandlers.ofString());
  }

  @Test
  void saysWhatIsRunning() throws Exception {
    assertThat(get("/api/about").body())
        .contains("\"name\":\"Evenpair\"", "\"database\":\"external\"", "127.0.0.1:" + port);
  }

  @Test
  void describesItsCalls() throws Exception {
    assertThat(get("/v3/api-docs").body()).contains("Apache-2.0", "/api/texts/{language}");
  }

  @Test
  void showsItsHealth() throws Exception {
    assertThat(get("/actuator/health").body()).contains("\"status\":\"UP\"", "PostgreSQL");
  }

  @Test
  void refusesAnUnknownAddressAsAProblemDocument() throws Exception {
    HttpResponse<String> answer = get("/api/nothing");
    assertThat(answer.statusCode()).isEqualTo(404);
    assertThat(answer.headers().firstValue("Content-Type")).hasValue("application/problem+json");
    assertThat(answer.body()).contains("\"type\":\"/problems/not-found\"", "/api/nothing");
  }
}
