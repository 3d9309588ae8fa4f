package evenpair.captures;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * Writes WAV files byte by byte for the tests, right ones and broken ones; shares nothing with the
 * reader.
 */
final class WavBytes {
  static final int PCM = 1;
  static final int FLOAT = 3;

  private WavBytes() {}

  /** A plain file: header, 'fmt ' and 'data'. */
  static byte[] file(int tag, int bits, int rate, double[]... channels) {
    return riff(fmt(tag, channels.length, rate, bits), chunk("data", samples(tag, bits, channels)));
  }

  static byte[] riff(byte[]... chunks) {
    byte[] body = join(chunks);
    return join(ascii("RIFF"), le(4, 4L + body.length), ascii("WAVE"), body);
  }

  static byte[] fmt(int tag, int channels, int rate, int bits) {
    int frame = channels * bits / 8;
    return chunk(
        "fmt ",
        join(
            le(2, tag),
            le(2, channels),
            le(4, rate),
            le(4, (long) rate * frame),
            le(2, frame),
            le(2, bits)));
  }

  static byte[] extensible(int tag, int channels, int rate, int bits) {
    int frame = channels * bits / 8;
    byte[] rest = {0, 0, 0, 0, 0x10, 0, (byte) 0x80, 0, 0, (byte) 0xAA, 0, 0x38, (byte) 0x9B, 0x71};
    return chunk(
        "fmt ",
        join(
            le(2, 0xFFFE),
            le(2, channels),
            le(4, rate),
            le(4, (long) rate * frame),
            le(2, frame),
            le(2, bits),
            le(2, 22),
            le(2, bits),
            le(4, 3),
            le(2, tag),
            rest));
  }

  static byte[] chunk(String id, byte[] body) {
    return join(ascii(id), le(4, body.length), body, new byte[body.length % 2]);
  }

  static byte[] samples(int tag, int bits, double[]... channels) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (int n = 0; n < channels[0].length; n++) {
      for (double[] channel : channels) {
        out.writeBytes(sample(tag, bits, channel[n]));
      }
    }
    return out.toByteArray();
  }

  static byte[] join(byte[]... parts) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      out.writeBytes(part);
    }
    return out.toByteArray();
  }

  static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  static byte[] le(int bytes, long value) {
    byte[] result = new byte[bytes];
    for (int i = 0; i < bytes; i++) {
      result[i] = (byte) (value >> 8 * i);
    }
    return result;
  }

  private static byte[] sample(int tag, int bits, double x) {
    if (tag == FLOAT) {
      ByteBuffer buffer = ByteBuffer.allocate(bits / 8).order(ByteOrder.LITTLE_ENDIAN);
      return (bits == 32 ? buffer.putFloat((float) x) : buffer.putDouble(x)).array();
    }
    double steps = Math.pow(2, bits - 1);
    long integer = (long) Math.max(-steps, Math.min(steps - 1, Math.rint(x * steps)));
    return le(bits / 8, bits == 8 ? integer + 128 : integer);
  }
}
