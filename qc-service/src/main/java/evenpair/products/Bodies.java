package evenpair.products;

import evenpair.web.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import org.springframework.http.InvalidMediaTypeException;
import org.springframework.http.MediaType;

/** Reading and writing of bodies that are not JSON. */
final class Bodies {
  static final String YAML = "application/yaml";
  static final String CSV = "text/csv";

  private Bodies() {}

  /**
   * @throws Refusal 413 if the body is larger than any limit set or golden response; no more than
   *     that is read
   */
  static byte[] read(InputStream body) throws IOException {
    byte[] bytes = body.readNBytes(YamlText.LARGEST + 1);
    requireShort(bytes);
    return bytes;
  }

  /**
   * @throws Refusal 413 as {@link #read}
   */
  static void requireShort(byte[] bytes) {
    if (bytes.length > YamlText.LARGEST) {
      throw new Refusal(
              413, "upload-too-large", "The body is larger than " + YamlText.LARGEST + " bytes.")
          .with("expected", "at most " + YamlText.LARGEST + " bytes");
    }
  }

  /**
   * @return true if the client asks for the other type before JSON
   */
  static boolean prefers(String other, String accept) {
    try {
      List<MediaType> asked = MediaType.parseMediaTypes(accept);
      return asked.stream()
          .filter(
              type ->
                  type.includes(MediaType.APPLICATION_JSON)
                      || type.includes(MediaType.parseMediaType(other)))
          .max((a, b) -> Double.compare(a.getQualityValue(), b.getQualityValue()))
          .filter(type -> !type.includes(MediaType.APPLICATION_JSON))
          .isPresent();
    } catch (InvalidMediaTypeException e) {
      return false;
    }
  }
}
