package evenpair.captures;

import static evenpair.captures.WavBytes.FLOAT;
import static evenpair.captures.WavBytes.PCM;
import static evenpair.captures.WavBytes.chunk;
import static evenpair.captures.WavBytes.fmt;
import static evenpair.captures.WavBytes.le;
import static evenpair.captures.WavBytes.riff;
import static evenpair.captures.WavBytes.samples;
import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Samples;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * A damaged file either reads, and then holds nothing but numbers, or is refused in words: no other
 * exception, no memory beyond what its own length asks for. The time limit is no measurement: it
 * only ends a reader that would never return.
 */
class DamagedFilesTests {
  private static final ThreadMXBean MEMORY = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  /** A refusal's own text and stack, and the first room for a curve's rows. */
  private static final long ANY_FILE = 1 << 16;

  @Test
  @Timeout(600)
  void thatShouldBeSoundReadOrAreRefused() {
    // an 8-bit sample becomes a float, four times its size; empty chunks of eight bytes cost a name
    // and two views of some 60 bytes each
    int refused = damage(sounds(), 11, DamagedFilesTests::readSound, 40);
    // half of the damages fall on the header; half of the rest leaves other samples
    assertThat(refused).isBetween(Mutations.COUNT / 5, Mutations.COUNT * 4 / 5);
  }

  @Test
  @Timeout(600)
  void thatShouldBeCurvesReadOrAreRefused() {
    // a row of ten bytes costs its text, its cells, two matchers and two numbers: some 1 kB
    int refused = damage(curves(), 12, DamagedFilesTests::readCurve, 300);
    // nearly every damage of a text spoils a number, a few only change one
    assertThat(refused).isBetween(Mutations.COUNT / 2, Mutations.COUNT * 97 / 100);
  }

  @Test
  @Timeout(600)
  void thatAreNoFilesAtAllAreRefused() {
    Random random = new Random(13);
    for (int k = 0; k < Mutations.COUNT; k++) {
      byte[] noise = new byte[random.nextInt(3000)];
      random.nextBytes(noise);
      assertThat(refuses(noise, DamagedFilesTests::readSound, 40)).isTrue();
      assertThat(refuses(noise, DamagedFilesTests::readCurve, 300)).isTrue();
    }
  }

  @Test
  void areGoodBeforeTheyAreDamaged() {
    sounds().forEach(DamagedFilesTests::readSound);
    curves().forEach(DamagedFilesTests::readCurve);
  }

  private static int damage(
      List<byte[]> good, long seed, Consumer<byte[]> reader, int bytesForEach) {
    Mutations mutations = new Mutations(seed);
    int refused = 0;
    for (int k = 0; k < Mutations.COUNT; k++) {
      byte[] file = mutations.of(good.get(k % good.size()));
      refused += refuses(file, reader, bytesForEach) ? 1 : 0;
    }
    return refused;
  }

  /**
   * @return whether the reader refused the file
   */
  private static boolean refuses(byte[] file, Consumer<byte[]> reader, int bytesForEach) {
    long allowed = ANY_FILE + (long) bytesForEach * file.length;
    Outcome outcome = outcome(file, reader);
    if (outcome.allocated() > allowed) {
      // code that runs for the first time makes its own classes; not so the second time
      outcome = outcome(file, reader);
    }
    assertThat(outcome.allocated()).isLessThanOrEqualTo(allowed);
    return outcome.refused();
  }

  private record Outcome(boolean refused, long allocated) {}

  private static Outcome outcome(byte[] file, Consumer<byte[]> reader) {
    boolean refused = false;
    long before = MEMORY.getCurrentThreadAllocatedBytes();
    try {
      reader.accept(file);
    } catch (UnreadableCapture refusal) {
      refused = true;
    } catch (RuntimeException | Error other) {
      String text = Base64.getEncoder().encodeToString(file);
      throw new AssertionError("neither read nor refused: " + text, other);
    }
    return new Outcome(refused, MEMORY.getCurrentThreadAllocatedBytes() - before);
  }

  private static void readSound(byte[] file) {
    WavAudio audio = WavReader.read(file);
    int frames = audio.channels().get(0).values().length;
    for (Samples channel : audio.channels()) {
      require(channel.values().length == frames, "channels of one length");
      for (float value : channel.values()) {
        require(Float.isFinite(value), "finite samples");
      }
    }
  }

  private static void readCurve(byte[] file) {
    CurveFile curve = CurveReader.read(file);
    require(curve.fromHz() > 0 && curve.fromHz() < curve.toHz(), "rising frequencies");
    int present = 0;
    for (int i = 0; i < Grid.POINTS; i++) {
      present += curve.level().has(i) ? 1 : 0;
    }
    require(present > 0, "a level somewhere on the grid");
  }

  private static void require(boolean holds, String what) {
    if (!holds) {
      throw new AssertionError("must hold " + what);
    }
  }

  private static List<byte[]> sounds() {
    double[] left = new Random(1).doubles(300, -0.9, 0.9).toArray();
    double[] right = new Random(2).doubles(300, -0.9, 0.9).toArray();
    return List.of(
        WavBytes.file(PCM, 8, 44_100, left),
        WavBytes.file(PCM, 16, 48_000, left, right),
        WavBytes.file(PCM, 24, 96_000, left, right),
        WavBytes.file(FLOAT, 32, 48_000, left),
        WavBytes.file(FLOAT, 64, 48_000, left, right),
        riff(
            chunk("JUNK", new byte[27]),
            WavBytes.extensible(PCM, 2, 48_000, 24),
            chunk("fact", le(4, 300)),
            chunk("data", samples(PCM, 24, left, right)),
            chunk("LIST", new byte[11])),
        riff(fmt(PCM, 3, 48_000, 16), chunk("data", samples(PCM, 16, left, right, left))));
  }

  private static List<byte[]> curves() {
    return List.of(
        curve("frequency_hz,level_db%n", "%.3f,%.2f%n", '.'),
        curve("", "%.3f;%.2f%n", ','),
        curve("# from another rig%nHz\tdB\tdeg%n", "%.3f\t%.2f\t%.1f%n", '.'),
        curve("* note%n", "  %.4f   %.3f%n", '.'),
        curve("\uFEFFf;L;phi%n", "%.2f ; %.2f ; %.2f%n", ','));
  }

  private static byte[] curve(String head, String row, char mark) {
    StringBuilder text = new StringBuilder(head.formatted());
    for (int i = 0; i < Grid.POINTS; i += 3) {
      String line = String.format(Locale.ROOT, row, Grid.hz(i), 80 + 5 * Math.sin(i), 10.0 * i);
      text.append(line.replace('.', mark));
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }
}
