package evenpair.demo.player;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Talks to the service as a bench's computer would. A request whose answer got lost is sent once
 * more: with its idempotency key the service answers it only once.
 */
public final class LineClient {
  private static final Duration ANSWER_WITHIN = Duration.ofSeconds(60);
  private static final Duration BETWEEN_LOOKS = Duration.ofMillis(250);

  private final JsonMapper json = JsonMapper.builder().build();
  private final HttpClient http =
      HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(5)).build();
  private final URI base;
  private final Credentials credentials;

  /** Signs the person in; null for a client that is no person. */
  private final String signIn;

  /**
   * A client that says nothing of itself.
   *
   * @param base such as {@code http://localhost:8080}
   */
  public LineClient(URI base) {
    this(base, Credentials.none(), null);
  }

  private LineClient(URI base, Credentials credentials, String signIn) {
    this.base = base;
    this.credentials = credentials;
    this.signIn = signIn;
  }

  /**
   * @return a client of a person, who signs in when the service asks for it, and again when the
   *     session has ended
   */
  static LineClient ofPerson(URI base, String name, String password) {
    Map<String, String> body = Map.of("name", name, "password", password);
    return new LineClient(
        base, Credentials.none(), JsonMapper.builder().build().writeValueAsString(body));
  }

  /**
   * @return a client with a station's token
   */
  public static LineClient ofStation(URI base, String token) {
    return new LineClient(base, Credentials.ofStation(token), null);
  }

  /**
   * @return where the service is
   */
  public URI base() {
    return base;
  }

  /** Waits until the service says that it is up. */
  public void awaitHealth(Duration patience) {
    long end = System.nanoTime() + patience.toNanos();
    String last = "no answer";
    while (System.nanoTime() < end) {
      try {
        HttpResponse<byte[]> answer =
            http.send(request("/actuator/health").GET().build(), BodyHandlers.ofByteArray());
        last = answer.statusCode() + " " + text(answer);
        if (answer.statusCode() == 200) {
          return;
        }
      } catch (IOException e) {
        last = e.toString();
      } catch (InterruptedException e) {
        throw interrupted(e);
      }
      pause();
    }
    throw new LineStopped(
        "the service at "
            + base
            + " is not up after "
            + patience.toSeconds()
            + " s; the last answer was: "
            + last);
  }

  /**
   * @return the JSON at that path, or nothing where the service knows no such thing (404)
   */
  Optional<JsonNode> find(String path) {
    HttpResponse<byte[]> answer = send(request(path).GET());
    return answer.statusCode() == 404
        ? Optional.empty()
        : Optional.of(json.readTree(accepted("GET " + path, answer)));
  }

  /**
   * @return the JSON at that path, which must be there
   */
  public JsonNode get(String path) {
    return find(path).orElseThrow(() -> new LineStopped("GET " + path + " was answered with 404"));
  }

  /**
   * @return the bytes at that path
   */
  public byte[] bytes(String path) {
    return accepted("GET " + path, send(request(path).GET()));
  }

  /** Sends a JSON body by PUT. */
  public JsonNode put(String path, Map<String, ?> body) {
    HttpRequest.Builder request = request(path).header("Content-Type", "application/json");
    String text = json.writeValueAsString(body);
    return json.readTree(accepted("PUT " + path, send(request.PUT(BodyPublishers.ofString(text)))));
  }

  /** Sends a JSON body by POST. */
  public JsonNode post(String path, Map<String, ?> body) {
    HttpRequest.Builder request = request(path).header("Content-Type", "application/json");
    String text = json.writeValueAsString(body);
    return json.readTree(
        accepted("POST " + path, send(request.POST(BodyPublishers.ofString(text)))));
  }

  /** Sends a multipart body by POST. */
  JsonNode post(String path, Multipart body) {
    HttpRequest.Builder request = multipart(path, body);
    return json.readTree(accepted("POST " + path, send(request)));
  }

  /** Sends a multipart body by POST under an idempotency key. */
  JsonNode post(String path, Multipart body, String idempotencyKey) {
    HttpRequest.Builder request = multipart(path, body).header("Idempotency-Key", idempotencyKey);
    return json.readTree(accepted("POST " + path, send(request)));
  }

  /**
   * @return the map as JSON text, for a multipart's JSON part
   */
  String text(Map<String, ?> body) {
    return json.writeValueAsString(body);
  }

  private HttpRequest.Builder multipart(String path, Multipart body) {
    return request(path)
        .header("Content-Type", Multipart.contentType())
        .POST(BodyPublishers.ofByteArray(body.bytes()));
  }

  private HttpRequest.Builder request(String path) {
    return HttpRequest.newBuilder(base.resolve(path))
        .timeout(ANSWER_WITHIN)
        .header("Accept-Language", "en");
  }

  /** A session that has ended, or none yet, is begun and the request sent again. */
  private HttpResponse<byte[]> send(HttpRequest.Builder request) {
    credentials.put(request);
    HttpResponse<byte[]> answer = send(request.build());
    if (answer.statusCode() != 401 || signIn == null) {
      return answer;
    }
    signIn();
    credentials.put(request);
    return send(request.build());
  }

  private void signIn() {
    credentials.forget();
    HttpRequest.Builder request =
        request("/api/session")
            .header("Content-Type", "application/json")
            .POST(BodyPublishers.ofString(signIn));
    HttpResponse<byte[]> answer = send(request.build());
    accepted("POST /api/session", answer);
    credentials.take(answer);
  }

  private HttpResponse<byte[]> send(HttpRequest request) {
    try {
      return http.send(request, BodyHandlers.ofByteArray());
    } catch (IOException lost) {
      return sendOnceMore(request, lost);
    } catch (InterruptedException e) {
      throw interrupted(e);
    }
  }

  private HttpResponse<byte[]> sendOnceMore(HttpRequest request, IOException lost) {
    pause();
    try {
      return http.send(request, BodyHandlers.ofByteArray());
    } catch (IOException e) {
      e.addSuppressed(lost);
      throw new LineStopped(
          "no answer from the service to " + request.method() + " " + request.uri() + ": " + e, e);
    } catch (InterruptedException e) {
      throw interrupted(e);
    }
  }

  private static byte[] accepted(String asked, HttpResponse<byte[]> answer) {
    if (answer.statusCode() < 200 || answer.statusCode() > 299) {
      throw new LineStopped(
          asked + " was answered with " + answer.statusCode() + ": " + text(answer));
    }
    return answer.body();
  }

  private static String text(HttpResponse<byte[]> answer) {
    return new String(answer.body(), StandardCharsets.UTF_8);
  }

  private static void pause() {
    try {
      Thread.sleep(BETWEEN_LOOKS.toMillis());
    } catch (InterruptedException e) {
      throw interrupted(e);
    }
  }

  private static LineStopped interrupted(InterruptedException e) {
    Thread.currentThread().interrupt();
    return new LineStopped("the line was interrupted", e);
  }
}
