package evenpair.demo.player;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class LineClientTests {
  /** What a request was answered with: a status, or 0 for a connection that breaks off. */
  private final List<Integer> answers = new CopyOnWriteArrayList<>();

  private final List<String> keys = new CopyOnWriteArrayList<>();
  private final List<String> bodies = new CopyOnWriteArrayList<>();
  private HttpServer server;
  private LineClient client;

  @BeforeEach
  void start() throws IOException {
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext(
        "/",
        exchange -> {
          keys.add(String.valueOf(exchange.getRequestHeaders().getFirst("Idempotency-Key")));
          bodies.add(new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8));
          int status = answers.remove(0);
          if (status != 0) {
            byte[] body =
                "{\"detail\":\"There is no tuning loud.\"}".getBytes(StandardCharsets.UTF_8);
            exchange.sendResponseHeaders(status, body.length);
            exchange.getResponseBody().write(body);
          }
          exchange.close();
        });
    server.start();
    client = new LineClient(URI.create("http://localhost:" + server.getAddress().getPort()));
  }

  @AfterEach
  void stop() {
    server.stop(0);
  }

  @Nested
  class ARequest {
    @Test
    void whoseAnswerGotLostIsSentOnceMoreWithItsKeyAndBody() {
      answers.addAll(List.of(0, 201));

      client.post(
          "/api/inspections", new Multipart().json("inspection", "{}"), "SG2-004201/plain/1");

      assertThat(keys).containsExactly("SG2-004201/plain/1", "SG2-004201/plain/1");
      assertThat(bodies.get(1)).isEqualTo(bodies.get(0)).contains("name=\"inspection\"");
    }

    @Test
    void thatIsRefusedStopsTheLineWithTheServicesOwnWords() {
      answers.add(422);

      assertThatExceptionOfType(LineStopped.class)
          .isThrownBy(() -> client.post("/api/inspections", Map.of()))
          .withMessageContaining("POST /api/inspections")
          .withMessageContaining("422")
          .withMessageContaining("There is no tuning loud.");
    }

    @Test
    void forSomethingUnknownFindsNothing() {
      answers.add(404);

      assertThat(client.find("/api/units/SG2-009999")).isEmpty();
    }
  }

  @Nested
  class Waiting {
    @Test
    void endsWhenTheServiceIsUp() {
      answers.addAll(List.of(503, 200));

      client.awaitHealth(Duration.ofSeconds(30));

      assertThat(bodies).hasSize(2);
    }

    @Test
    void givesUpAndSaysWhatTheLastAnswerWas() {
      server.stop(0);

      assertThatExceptionOfType(LineStopped.class)
          .isThrownBy(() -> client.awaitHealth(Duration.ofMillis(50)))
          .withMessageContaining("not up")
          .withMessageContaining("Connect");
    }
  }
}
