package evenpair.ledger;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 of what a sealed entry refers to. */
public final class Digests {
  private Digests() {}

  /** @return SHA-256 of the bytes, lower-case hex */
  public static String of(byte[] bytes) {
    return HexFormat.of().formatHex(sha256(bytes));
  }

  /** @return SHA-256 over the curve's big-endian IEEE-754 bytes, lower-case hex */
  public static String ofCurve(float[] curve) {
    ByteBuffer bytes = ByteBuffer.allocate(Float.BYTES * curve.length);
    for (float level : curve) {
      bytes.putFloat(level);
    }
    return of(bytes.array());
  }

  private static byte[] sha256(byte[] bytes) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(bytes);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
