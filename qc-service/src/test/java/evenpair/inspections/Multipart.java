package evenpair.inspections;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/** Writes a multipart/form-data body by hand, as another rig's program would. */
final class Multipart {
  static final String BOUNDARY = "evenpair-test-boundary-7f3a";
  static final String CONTENT_TYPE = "multipart/form-data; boundary=" + BOUNDARY;

  private final ByteArrayOutputStream body = new ByteArrayOutputStream();

  Multipart json(String name, String json) {
    return part(name, null, "application/json", json.getBytes(StandardCharsets.UTF_8));
  }

  Multipart wav(String name, byte[] wav) {
    return part(name, name + ".wav", "audio/wav", wav);
  }

  Multipart csv(String name, String csv) {
    return part(name, name + ".csv", "text/csv", csv.getBytes(StandardCharsets.UTF_8));
  }

  Multipart part(String name, String fileName, String type, byte[] content) {
    String file = fileName == null ? "" : "; filename=\"" + fileName + '"';
    text(
        "--"
            + BOUNDARY
            + "\r\nContent-Disposition: form-data; name=\""
            + name
            + '"'
            + file
            + "\r\n");
    text("Content-Type: " + type + "\r\n\r\n");
    body.writeBytes(content);
    text("\r\n");
    return this;
  }

  byte[] end() {
    text("--" + BOUNDARY + "--\r\n");
    return body.toByteArray();
  }

  /**
   * @return what has been written so far, without the end: a client that hangs up
   */
  byte[] unfinished() {
    return body.toByteArray();
  }

  private void text(String text) {
    body.writeBytes(text.getBytes(StandardCharsets.UTF_8));
  }
}
