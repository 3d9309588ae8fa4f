package evenpair.demo.player;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/** A multipart/form-data body (RFC 7578) built in memory. */
final class Multipart {
  private static final String BOUNDARY = "evenpair-line-7d1f0c5a9b";

  private final ByteArrayOutputStream body = new ByteArrayOutputStream();

  /** Adds a JSON part. */
  Multipart json(String name, String json) {
    return part(name, null, "application/json", json.getBytes(StandardCharsets.UTF_8));
  }

  /** Adds a WAV file. */
  Multipart wav(String name, byte[] file) {
    return part(name, name + ".wav", "audio/wav", file);
  }

  /** Adds a curve as text. */
  Multipart curve(String name, String csv) {
    return part(name, name + ".csv", "text/csv", csv.getBytes(StandardCharsets.UTF_8));
  }

  static String contentType() {
    return "multipart/form-data; boundary=" + BOUNDARY;
  }

  byte[] bytes() {
    ByteArrayOutputStream whole = new ByteArrayOutputStream();
    whole.writeBytes(body.toByteArray());
    whole.writeBytes(ascii("--" + BOUNDARY + "--\r\n"));
    return whole.toByteArray();
  }

  private Multipart part(String name, String fileName, String type, byte[] content) {
    String file = fileName == null ? "" : "; filename=\"" + fileName + "\"";
    body.writeBytes(
        ascii(
            "--"
                + BOUNDARY
                + "\r\nContent-Disposition: form-data; name=\""
                + name
                + "\""
                + file
                + "\r\n"));
    body.writeBytes(ascii("Content-Type: " + type + "\r\n\r\n"));
    body.writeBytes(content);
    body.writeBytes(ascii("\r\n"));
    return this;
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
