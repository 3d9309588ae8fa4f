package evenpair.captures;

import evenpair.acoustics.Samples;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * Writes a WAV file of 32-bit IEEE floats: chunks {@code fmt } (format tag 3, 18 bytes), {@code
 * fact} (number of frames, which every format but PCM needs) and {@code data}. The same samples
 * always give the same bytes.
 */
public final class WavWriter {
  private static final short IEEE_FLOAT = 3;
  private static final int FMT_BYTES = 18;
  private static final int FACT_BYTES = 4;
  private static final int CHUNK_HEAD = 8;
  private static final int BEFORE_DATA =
      12 + CHUNK_HEAD + FMT_BYTES + CHUNK_HEAD + FACT_BYTES + CHUNK_HEAD;

  private WavWriter() {}

  /**
   * @param channels one (mono) or two (stereo, left first), equally long, at the same
   *     whole-numbered sample rate
   * @return the file's bytes
   * @throws IllegalArgumentException if the channels do not go together, a sample is not finite, or
   *     2 GiB would be passed
   */
  public static byte[] float32(Samples... channels) {
    check(channels);
    int frames = channels[0].values().length;
    long dataBytes = (long) frames * channels.length * Float.BYTES;
    if (BEFORE_DATA + dataBytes > Integer.MAX_VALUE - CHUNK_HEAD) {
      throw new IllegalArgumentException(
          "a WAV file of " + dataBytes + " bytes of samples is too long to write");
    }
    ByteBuffer file =
        ByteBuffer.allocate((int) (BEFORE_DATA + dataBytes)).order(ByteOrder.LITTLE_ENDIAN);
    writeHead(file, channels.length, (int) channels[0].rateHz(), frames);
    chunk(file, "data", (int) dataBytes);
    for (int frame = 0; frame < frames; frame++) {
      for (Samples channel : channels) {
        file.putFloat(channel.values()[frame]);
      }
    }
    return file.array();
  }

  private static void writeHead(ByteBuffer file, int channels, int rateHz, int frames) {
    int frameBytes = channels * Float.BYTES;
    chunk(file, "RIFF", file.capacity() - CHUNK_HEAD);
    tag(file, "WAVE");
    chunk(file, "fmt ", FMT_BYTES);
    file.putShort(IEEE_FLOAT).putShort((short) channels).putInt(rateHz).putInt(rateHz * frameBytes);
    file.putShort((short) frameBytes).putShort((short) Float.SIZE).putShort((short) 0);
    chunk(file, "fact", FACT_BYTES);
    file.putInt(frames);
  }

  private static void chunk(ByteBuffer file, String name, int bytes) {
    tag(file, name);
    file.putInt(bytes);
  }

  private static void tag(ByteBuffer file, String name) {
    file.put(name.getBytes(StandardCharsets.US_ASCII));
  }

  private static void check(Samples... channels) {
    if (channels.length < 1 || channels.length > 2) {
      throw new IllegalArgumentException(
          "one or two channels can be written, were given " + channels.length);
    }
    Samples first = channels[0];
    if (first.rateHz() != Math.rint(first.rateHz()) || first.rateHz() > 1_000_000) {
      throw new IllegalArgumentException(
          "sample rate must be a whole number up to 1 MHz, was " + first.rateHz());
    }
    for (Samples channel : channels) {
      if (channel.values().length != first.values().length || channel.rateHz() != first.rateHz()) {
        throw new IllegalArgumentException("both channels need the same length and sample rate");
      }
      requireFinite(channel.values());
    }
  }

  private static void requireFinite(float[] values) {
    for (int i = 0; i < values.length; i++) {
      if (!Float.isFinite(values[i])) {
        throw new IllegalArgumentException("sample " + i + " must be finite, was " + values[i]);
      }
    }
  }
}
