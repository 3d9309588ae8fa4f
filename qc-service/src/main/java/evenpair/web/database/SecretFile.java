package evenpair.web.database;

import evenpair.web.DurableFiles;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.HexFormat;

/** Random passwords, and one kept in a file that only its owner can read. */
final class SecretFile {
  private static final SecureRandom RANDOM = new SecureRandom();

  private SecretFile() {}

  /**
   * @return 256 random bits as hex, which needs no escaping anywhere
   */
  static String random() {
    byte[] bytes = new byte[32];
    RANDOM.nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }

  /**
   * @return what the file holds; it is made with a new secret if it is missing
   */
  static String readOrMake(Path file) throws IOException {
    if (!Files.exists(file)) {
      DurableFiles.writePrivate(file, (random() + "\n").getBytes(StandardCharsets.UTF_8));
    }
    return Files.readString(file, StandardCharsets.UTF_8).strip();
  }
}
