package evenpair.demo.line;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * Writes mono WAV files of 24-bit integers, as a bench's sound interface records them: chunks
 * {@code fmt } (format tag 1) and {@code data}. What is beyond full scale is held there, as a
 * converter does.
 */
final class Pcm24 {
  /** One more than the largest code. */
  private static final double SCALE = 1 << 23;

  private static final int HEAD_BYTES = 44;
  private static final int SAMPLE_BYTES = 3;

  private Pcm24() {}

  /**
   * @param samples re full scale
   * @param rateHz samples a second, a whole number
   */
  static byte[] mono(double[] samples, int rateHz) {
    int dataBytes = samples.length * SAMPLE_BYTES;
    int padding = dataBytes % 2;
    ByteBuffer file =
        ByteBuffer.allocate(HEAD_BYTES + dataBytes + padding).order(ByteOrder.LITTLE_ENDIAN);
    tag(file, "RIFF").putInt(file.capacity() - 8);
    tag(file, "WAVE");
    tag(file, "fmt ").putInt(16).putShort((short) 1).putShort((short) 1).putInt(rateHz);
    file.putInt(rateHz * SAMPLE_BYTES).putShort((short) SAMPLE_BYTES).putShort((short) 24);
    tag(file, "data").putInt(dataBytes);
    for (double sample : samples) {
      int code = code(sample);
      file.put((byte) code).put((byte) (code >> 8)).put((byte) (code >> 16));
    }
    return file.array();
  }

  private static int code(double sample) {
    return (int) Math.max(-SCALE, Math.min(SCALE - 1, Math.rint(sample * SCALE)));
  }

  private static ByteBuffer tag(ByteBuffer file, String name) {
    return file.put(name.getBytes(StandardCharsets.US_ASCII));
  }
}
