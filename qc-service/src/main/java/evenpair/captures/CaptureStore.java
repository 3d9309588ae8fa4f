package evenpair.captures;

import java.io.IOException;
import java.io.InputStream;

/**
 * Keeps the bytes of every capture under their SHA-256, written and synced before the call returns.
 */
public interface CaptureStore {
  /**
   * Stores the bytes; the same bytes twice are stored once.
   *
   * @return the SHA-256 in lower-case hex
   * @throws StorageFailure if they cannot be made durable (a full disk, say); nothing is left
   *     behind then
   */
  String keep(byte[] bytes);

  /**
   * @param sha256 digest in lower-case hex
   * @return the bytes as stored
   * @throws IOException if there is no such file or it cannot be read
   */
  InputStream open(String sha256) throws IOException;

  /**
   * @return true if a file of that digest is there
   */
  boolean has(String sha256);
}
