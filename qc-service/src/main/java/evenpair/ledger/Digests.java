package evenpair.ledger;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 of what a sealed entry refers to. */
public final class Digests {
  private Digests() {}

  /**
   * @return SHA-256 of the bytes, lower-case hex
   */
  public static String of(byte[] bytes) {
    return HexFormat.of().formatHex(sha256(bytes));
  }

  /**
   * @return SHA-256 over the curve's big-endian IEEE-754 bytes, lower-case hex
   */
  public static String ofCurve(float[] curve) {
    ByteBuffer bytes = ByteBuffer.allocate(Float.BYTES * curve.length);
    for (float level : curve) {
      bytes.putFloat(level);
    }
    return of(bytes.array());
  }

  /**
   * @return SHA-256 of the parts, one after the other
   */
  static byte[] sha256(byte[]... parts) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      for (byte[] part : parts) {
        digest.update(part);
      }
      return digest.digest();
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
