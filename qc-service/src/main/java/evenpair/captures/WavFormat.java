package evenpair.captures;

import java.nio.ByteBuffer;

/** A WAV file's chunk 'fmt ', checked. */
record WavFormat(int channels, double rateHz, int bits, boolean floatingPoint) {
  private static final int PCM = 1;
  private static final int IEEE_FLOAT = 3;
  private static final int EXTENSIBLE = 0xFFFE;
  private static final int BASE_BYTES = 16;
  private static final int EXTENSIBLE_BYTES = 40;
  private static final int MAX_CHANNELS = 8;
  private static final int LEAST_RATE = 8_000;
  private static final int GREATEST_RATE = 384_000;

  /** What follows the two bytes of the tag in an extensible sub-format. */
  private static final int[] SUBFORMAT_REST = {
    0x00, 0x00, 0x00, 0x00, 0x10, 0x00, 0x80, 0x00, 0x00, 0xAA, 0x00, 0x38, 0x9B, 0x71
  };

  /**
   * @throws UnreadableCapture naming the field that is missing, contradictory or not read here
   */
  static WavFormat of(ByteBuffer chunk) {
    if (chunk.remaining() < BASE_BYTES) {
      throw refusal("is " + chunk.remaining() + " bytes long", "16 bytes at least");
    }
    int tag = tag(chunk);
    int channels = Short.toUnsignedInt(chunk.getShort(2));
    long rate = Integer.toUnsignedLong(chunk.getInt(4));
    int frame = Short.toUnsignedInt(chunk.getShort(12));
    int bits = Short.toUnsignedInt(chunk.getShort(14));
    if (channels < 1 || channels > MAX_CHANNELS) {
      throw refusal("says " + channels + " channels", "1 to 8 channels");
    }
    if (rate < LEAST_RATE || rate > GREATEST_RATE) {
      throw refusal("says " + rate + " samples a second", "8000 to 384000");
    }
    if (tag == PCM && bits != 8 && bits != 16 && bits != 24 && bits != 32) {
      throw refusal("says integer samples of " + bits + " bits", "8, 16, 24 or 32 bits");
    }
    if (tag == IEEE_FLOAT && bits != 32 && bits != 64) {
      throw refusal("says floating-point samples of " + bits + " bits", "32 or 64 bits");
    }
    if (frame != channels * bits / 8) {
      throw refusal(
          "says " + frame + " bytes for one sample of each channel",
          channels * bits / 8 + " bytes");
    }
    return new WavFormat(channels, rate, bits, tag == IEEE_FLOAT);
  }

  int frameBytes() {
    return channels * bits / 8;
  }

  /**
   * @return the sample at a byte offset, full scale ±1; not yet checked for being finite
   */
  double sample(ByteBuffer data, int at) {
    if (floatingPoint) {
      return bits == 32 ? data.getFloat(at) : data.getDouble(at);
    }
    return switch (bits) {
      case 8 -> (Byte.toUnsignedInt(data.get(at)) - 128) / 128.0;
      case 16 -> data.getShort(at) / 32768.0;
      case 24 -> (Short.toUnsignedInt(data.getShort(at)) | data.get(at + 2) << 16) / 8388608.0;
      default -> data.getInt(at) / 2147483648.0;
    };
  }

  private static int tag(ByteBuffer chunk) {
    int tag = Short.toUnsignedInt(chunk.getShort(0));
    if (tag == EXTENSIBLE) {
      if (chunk.remaining() < EXTENSIBLE_BYTES) {
        throw refusal("is extensible but only " + chunk.remaining() + " bytes long", "40 bytes");
      }
      for (int i = 0; i < SUBFORMAT_REST.length; i++) {
        if (Byte.toUnsignedInt(chunk.get(26 + i)) != SUBFORMAT_REST[i]) {
          throw refusal("names a sub-format that is not read here", "PCM or IEEE float");
        }
      }
      tag = Short.toUnsignedInt(chunk.getShort(24));
    }
    if (tag != PCM && tag != IEEE_FLOAT) {
      throw refusal("says format " + tag, "1 (PCM) or 3 (IEEE float), plain or extensible");
    }
    return tag;
  }

  private static UnreadableCapture refusal(String what, String expected) {
    return new UnreadableCapture(
        "The WAV file's description " + what + ".", "chunk 'fmt '", expected);
  }
}
