package evenpair.stations;

import evenpair.access.TestCallers;
import java.io.ByteArrayOutputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;

/** A multipart request as a rig's own client would write it. */
final class Multipart {
  private static final String BOUNDARY = "part-of-a-station-test";
  private static final HttpClient CLIENT = HttpClient.newHttpClient();

  private final ByteArrayOutputStream body = new ByteArrayOutputStream();

  Multipart json(String name, String json) {
    return part(
        "Content-Disposition: form-data; name=\"" + name + "\"\r\nContent-Type: application/json",
        json.getBytes(StandardCharsets.UTF_8));
  }

  Multipart wav(String name, byte[] bytes) {
    return part(
        "Content-Disposition: form-data; name=\""
            + name
            + "\"; filename=\""
            + name
            + ".wav\"\r\nContent-Type: audio/wav",
        bytes);
  }

  HttpResponse<String> post(String url) throws Exception {
    ByteArrayOutputStream whole = new ByteArrayOutputStream();
    whole.writeBytes(body.toByteArray());
    whole.writeBytes(("--" + BOUNDARY + "--\r\n").getBytes(StandardCharsets.US_ASCII));
    HttpRequest request =
        HttpRequest.newBuilder(URI.create(url))
            .header("Content-Type", "multipart/form-data; boundary=" + BOUNDARY)
            .POST(HttpRequest.BodyPublishers.ofByteArray(whole.toByteArray()))
            .build();
    return CLIENT.send(request, HttpResponse.BodyHandlers.ofString());
  }

  static HttpResponse<String> send(String method, String url, String json) throws Exception {
    return sendAs(TestCallers.ENGINEER, method, url, json);
  }

  static HttpResponse<String> sendAs(String person, String method, String url, String json)
      throws Exception {
    HttpRequest request =
        HttpRequest.newBuilder(URI.create(url))
            .header(TestCallers.PERSON, person)
            .header("Content-Type", "application/json")
            .method(
                method,
                json == null
                    ? HttpRequest.BodyPublishers.noBody()
                    : HttpRequest.BodyPublishers.ofString(json))
            .build();
    return CLIENT.send(request, HttpResponse.BodyHandlers.ofString());
  }

  private Multipart part(String head, byte[] bytes) {
    body.writeBytes(
        ("--" + BOUNDARY + "\r\n" + head + "\r\n\r\n").getBytes(StandardCharsets.UTF_8));
    body.writeBytes(bytes);
    body.writeBytes("\r\n".getBytes(StandardCharsets.US_ASCII));
    return this;
  }
}
