package evenpair.web;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.EvenpairDatabaseTest;
import evenpair.access.TestCallers;
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
  void showsItsHealthToAdministratorsInDetail() throws Exception {
    assertThat(get("/actuator/health", "administrator").body())
        .contains("PostgreSQL", "\"ledger\"", "\"captures\"", "freeBytes", "two database roles");
    assertThat(get("/actuator/health", "engineer").body())
        .contains("\"status\":")
        .doesNotContain("PostgreSQL", "freeBytes");
  }

  private HttpResponse<String> get(String path, String roles) throws Exception {
    URI uri = URI.create("http://127.0.0.1:" + port + path);
    HttpRequest request = HttpRequest.newBuilder(uri).header(TestCallers.ROLES, roles).build();
    return client.send(request, HttpResponse.BodyHandlers.ofString());
  }

  @Test
  void refusesAnUnknownAddressAsAProblemDocument() throws Exception {
    HttpResponse<String> answer = get("/api/nothing");
    assertThat(answer.statusCode()).isEqualTo(404);
    assertThat(answer.headers().firstValue("Content-Type")).hasValue("application/problem+json");
    assertThat(answer.body()).contains("\"type\":\"/problems/not-found\"", "/api/nothing");
  }
}
