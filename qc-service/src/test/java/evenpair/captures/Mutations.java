package evenpair.captures;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.Random;

/** Damages good files in the ways that transfers, editors and ill will do; seeded. */
final class Mutations {
  /** How many damaged files a test looks at; a long run sets the system property. */
  static final int COUNT = Integer.getInteger("evenpair.mutations", 400);

  private static final int[] BOUNDARIES = {
    0,
    1,
    -1,
    2,
    3,
    7,
    8,
    15,
    16,
    255,
    256,
    0x7FFF,
    0x8000,
    0xFFFF,
    0x10000,
    Integer.MAX_VALUE,
    Integer.MIN_VALUE,
    0x7F800000,
    0x7FC00000,
    0x1000_0000
  };

  private static final int MOST_AT_ONCE = 4;

  private final Random random;

  Mutations(long seed) {
    random = new Random(seed);
  }

  /**
   * @return a copy with one to four damages
   */
  byte[] of(byte[] good) {
    byte[] file = good;
    for (int k = random.nextInt(MOST_AT_ONCE); k >= 0; k--) {
      file = file.length == 0 ? new byte[] {(byte) random.nextInt()} : damaged(file.clone());
    }
    return file;
  }

  private byte[] damaged(byte[] file) {
    int at = place(file.length);
    int length = 1 + random.nextInt(Math.min(64, file.length - at));
    switch (random.nextInt(8)) {
      case 0 -> file[at] ^= (byte) (1 << random.nextInt(8));
      case 1 -> file[at] = (byte) random.nextInt();
      case 2 -> putBoundary(file, at);
      case 3 -> Arrays.fill(file, at, at + length, file[at]);
      case 4 -> {
        return Arrays.copyOf(file, at);
      }
      case 5 -> {
        return spliced(file, at, new byte[0], at + length);
      }
      case 6 -> {
        return spliced(file, at, noise(length), at);
      }
      default -> {
        int from = place(file.length);
        int to = Math.min(file.length, from + length);
        return spliced(file, at, Arrays.copyOfRange(file, from, to), at);
      }
    }
    return file;
  }

  /** Half of the damages fall among the first 64 bytes, where files describe themselves. */
  private int place(int length) {
    return random.nextInt(random.nextBoolean() ? Math.min(64, length) : length);
  }

  private void putBoundary(byte[] file, int at) {
    int value = BOUNDARIES[random.nextInt(BOUNDARIES.length)];
    ByteBuffer four = ByteBuffer.allocate(4).order(ByteOrder.LITTLE_ENDIAN).putInt(value);
    int width = Math.min(random.nextBoolean() ? 4 : 2, file.length - at);
    System.arraycopy(four.array(), 0, file, at, width);
  }

  private byte[] noise(int length) {
    byte[] bytes = new byte[length];
    random.nextBytes(bytes);
    return bytes;
  }

  private static byte[] spliced(byte[] file, int until, byte[] between, int from) {
    return WavBytes.join(
        Arrays.copyOf(file, until), between, Arrays.copyOfRange(file, from, file.length));
  }
}
