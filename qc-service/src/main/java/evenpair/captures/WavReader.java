package evenpair.captures;

import evenpair.acoustics.Samples;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Decodes RIFF WAVE files: PCM of 8 (unsigned), 16, 24 and 32 bits, IEEE float of 32 and 64 bits,
 * plain or extensible, one to eight channels, 8 to 384 kHz. Strict: what contradicts itself is
 * refused with a sentence, and nothing is ever allocated for a size that a header only claims.
 *
 * <p>Source of the layout: Microsoft/IBM "Multimedia Programming Interface and Data Specifications
 * 1.0" and the extensible format's description, from memory.
 */
public final class WavReader {
  private static final int HEADER = 12;
  private static final int CHUNK_HEADER = 8;

  private WavReader() {}

  /**
   * @param file the whole file
   * @return its channels, full scale ±1
   * @throws UnreadableCapture if it is not such a file, truncated, empty of samples, or holds a
   *     sample that is not a number
   */
  public static WavAudio read(byte[] file) {
    checkKind(file);
    ByteBuffer buffer = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN).position(HEADER);
    WavFormat format = null;
    ByteBuffer data = null;
    while (buffer.remaining() >= CHUNK_HEADER && data == null) {
      String id = text(file, buffer.position(), 4);
      long size = Integer.toUnsignedLong(buffer.getInt(buffer.position() + 4));
      buffer.position(buffer.position() + CHUNK_HEADER);
      checkSize(id, size, buffer.remaining());
      ByteBuffer chunk = buffer.slice(buffer.position(), (int) size).order(ByteOrder.LITTLE_ENDIAN);
      if (id.equals("fmt ")) {
        refuseSecond(format, id);
        format = WavFormat.of(chunk);
      } else if (id.equals("data")) {
        data = chunk;
      }
      // chunks are padded to even length; the last one's pad byte is often left out
      buffer.position((int) Math.min(buffer.limit(), buffer.position() + size + (size & 1)));
    }
    if (data == null) {
      throw new UnreadableCapture(
          "The WAV file holds no samples: it has no 'data' chunk.",
          "end of file",
          "a chunk 'data' after the chunk 'fmt '");
    }
    if (format == null) {
      throw new UnreadableCapture(
          "The WAV file does not say how its samples are stored before they begin.",
          "chunk 'data'",
          "a chunk 'fmt ' before the chunk 'data'");
    }
    return decode(format, data);
  }

  private static void checkKind(byte[] file) {
    if (file.length == 0) {
      throw new UnreadableCapture("The file is empty.", "", "a WAV file");
    }
    String kind = text(file, 0, 4);
    if (kind.equals("RF64") || kind.equals("BW64")) {
      throw new UnreadableCapture(
          "The file is an "
              + kind
              + " file, the form for recordings over 4 GiB, which is not read here.",
          "first 4 bytes",
          "RIFF WAVE; a capture lasts a few seconds");
    }
    if (file.length < HEADER || !kind.equals("RIFF") || !text(file, 8, 4).equals("WAVE")) {
      String found = printable(text(file, 0, Math.min(HEADER, file.length)));
      throw new UnreadableCapture(
          "The file is not a WAV file: it begins with \"" + found + "\".",
          "first 12 bytes",
          "RIFF, a size, WAVE");
    }
  }

  private static void checkSize(String id, long size, int remaining) {
    if (size > remaining) {
      throw new UnreadableCapture(
          "The WAV file is cut short: its chunk '"
              + printable(id)
              + "' should hold "
              + size
              + " bytes, but only "
              + remaining
              + " follow.",
          "chunk '" + printable(id) + "'",
          size + " bytes");
    }
  }

  private static void refuseSecond(WavFormat format, String id) {
    if (format != null) {
      throw new UnreadableCapture(
          "The WAV file describes its samples twice.",
          "second chunk '" + id + "'",
          "one chunk '" + id + "'");
    }
  }

  private static WavAudio decode(WavFormat format, ByteBuffer data) {
    int frames = data.remaining() / format.frameBytes();
    if (data.remaining() == 0) {
      throw new UnreadableCapture(
          "The WAV file holds no samples.", "chunk 'data'", "at least one sample a channel");
    }
    if (data.remaining() % format.frameBytes() != 0) {
      throw new UnreadableCapture(
          "The WAV file ends inside a sample: "
              + data.remaining()
              + " bytes of samples are no multiple of "
              + format.frameBytes()
              + ".",
          "chunk 'data'",
          "a multiple of " + format.frameBytes() + " bytes");
    }
    List<Samples> channels = new ArrayList<>();
    for (int channel = 0; channel < format.channels(); channel++) {
      channels.add(new Samples(channel(format, data, channel, frames), format.rateHz()));
    }
    return new WavAudio(channels, format.bits(), format.floatingPoint());
  }

  private static float[] channel(WavFormat format, ByteBuffer data, int channel, int frames) {
    float[] values = new float[frames];
    int offset = channel * format.bits() / 8;
    for (int n = 0; n < frames; n++) {
      double value = format.sample(data, n * format.frameBytes() + offset);
      values[n] = (float) value;
      if (!Float.isFinite(values[n])) {
        throw new UnreadableCapture(
            "The WAV file holds a sample that is no number a capture can have: " + value + ".",
            "channel " + (channel + 1) + ", sample " + n,
            "finite samples, full scale ±1");
      }
    }
    return values;
  }

  private static String text(byte[] file, int from, int length) {
    int end = Math.min(file.length, from + length);
    return new String(
        file, Math.min(from, end), end - Math.min(from, end), StandardCharsets.ISO_8859_1);
  }

  private static String printable(String text) {
    return text.replaceAll("[^ -~]", "·");
  }
}
