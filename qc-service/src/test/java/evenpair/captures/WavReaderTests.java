package evenpair.captures;

import static evenpair.captures.WavBytes.FLOAT;
import static evenpair.captures.WavBytes.PCM;
import static evenpair.captures.WavBytes.chunk;
import static evenpair.captures.WavBytes.fmt;
import static evenpair.captures.WavBytes.join;
import static evenpair.captures.WavBytes.le;
import static evenpair.captures.WavBytes.riff;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WavReaderTests {
  private static final double[] LEFT = {0, 0.5, -0.5, 0.25, -1};
  private static final double[] RIGHT = {-0.125, 0.75, 0, -0.0625, 0.5};

  private static UnreadableCapture refusal(byte[] file) {
    UnreadableCapture refusal =
        catchThrowableOfType(UnreadableCapture.class, () -> WavReader.read(file));
    assertThat(refusal).as("must be refused").isNotNull();
    return refusal;
  }

  @Nested
  class Reads {
    @ParameterizedTest
    @CsvSource({"1, 8", "1, 16", "1, 24", "1, 32", "3, 32", "3, 64"})
    void everyFormatExactly(int tag, int bits) {
      // all values are multiples of 1/16: exact in every format
      WavAudio audio = WavReader.read(WavBytes.file(tag, bits, 48_000, LEFT, RIGHT));
      assertThat(audio.channels()).hasSize(2);
      assertThat(audio.bitsPerSample()).isEqualTo(bits);
      assertThat(audio.floatingPoint()).isEqualTo(tag == FLOAT);
      assertThat(audio.rateHz()).isEqualTo(48_000);
      for (int n = 0; n < LEFT.length; n++) {
        assertThat((double) audio.channels().get(0).values()[n]).isEqualTo(LEFT[n]);
        assertThat((double) audio.channels().get(1).values()[n]).isEqualTo(RIGHT[n]);
      }
    }

    @Test
    void twentyFourBitsToTheLastOne() {
      // by hand, little-endian: 000001 is one step, 7FFFFF the largest, 800000 the smallest, FFFFFF
      // minus one step
      byte[] data = {
        1,
        0,
        0,
        (byte) 0xFF,
        (byte) 0xFF,
        0x7F,
        0,
        0,
        (byte) 0x80,
        (byte) 0xFF,
        (byte) 0xFF,
        (byte) 0xFF
      };
      float[] values =
          WavReader.read(riff(fmt(PCM, 1, 48_000, 24), chunk("data", data)))
              .channels()
              .get(0)
              .values();
      float step = (float) Math.pow(2, -23);
      assertThat(values).containsExactly(step, 1 - step, -1, -step);
    }

    @ParameterizedTest
    @CsvSource({"1, 16", "1, 24", "3, 32"})
    void theExtensibleForm(int tag, int bits) {
      byte[] file =
          riff(
              WavBytes.extensible(tag, 2, 96_000, bits),
              chunk("fact", le(4, 5)),
              chunk("data", WavBytes.samples(tag, bits, LEFT, RIGHT)));
      WavAudio audio = WavReader.read(file);
      assertThat(audio.rateHz()).isEqualTo(96_000);
      assertThat((double) audio.channels().get(1).values()[1]).isEqualTo(0.75);
    }

    @Test
    void pastChunksItDoesNotKnowAlsoOfOddLength() {
      byte[] file =
          riff(
              chunk("JUNK", new byte[27]),
              fmt(PCM, 1, 44_100, 8),
              chunk("LIST", new byte[] {1}),
              chunk("data", new byte[] {(byte) 128, (byte) 255, 0}),
              chunk("bext", new byte[5]));
      assertThat(WavReader.read(file).channels().get(0).values())
          .containsExactly(0, 127 / 128f, -1);
    }

    @Test
    void aFileWhoseLastPadByteIsMissing() {
      byte[] file = riff(fmt(PCM, 1, 44_100, 8), chunk("data", new byte[] {0, 1, 2}));
      assertThat(WavReader.read(Arrays.copyOf(file, file.length - 1)).channels().get(0).values())
          .hasSize(3);
    }

    @Test
    void eightChannels() {
      double[][] channels = new double[8][3];
      channels[7][2] = 0.5;
      assertThat(
              WavReader.read(WavBytes.file(PCM, 16, 48_000, channels))
                  .channels()
                  .get(7)
                  .values()[2])
          .isEqualTo(0.5f);
    }

    @ParameterizedTest
    @ValueSource(ints = {8000, 384_000})
    void theLowestAndTheHighestRate(int rate) {
      assertThat(WavReader.read(WavBytes.file(PCM, 16, rate, LEFT)).rateHz()).isEqualTo(rate);
    }

    @Test
    void floatsAboveFullScaleAsTheyAre() {
      assertThat(
              WavReader.read(WavBytes.file(FLOAT, 32, 48_000, new double[] {1.5, -3}))
                  .channels()
                  .get(0)
                  .values())
          .containsExactly(1.5f, -3);
    }
  }

  @Nested
  class Refuses {
    @Test
    void anEmptyFile() {
      assertThat(refusal(new byte[0])).hasMessage("The file is empty.");
    }

    @Test
    void textNamedWav() {
      UnreadableCapture refusal =
          refusal("frequency,level\n20,80\n".getBytes(StandardCharsets.UTF_8));
      assertThat(refusal)
          .hasMessage("The file is not a WAV file: it begins with \"frequency,le\".");
      assertThat(refusal.expected()).contains("RIFF");
    }

    @ParameterizedTest
    @ValueSource(strings = {"RF64", "BW64"})
    void theFormForHugeFilesInAClearSentence(String kind) {
      byte[] file = WavBytes.file(PCM, 16, 48_000, LEFT);
      System.arraycopy(WavBytes.ascii(kind), 0, file, 0, 4);
      assertThat(refusal(file)).hasMessageContaining(kind).hasMessageContaining("4 GiB");
    }

    @Test
    void aFileCutShort() {
      byte[] file = WavBytes.file(PCM, 16, 48_000, LEFT, RIGHT);
      UnreadableCapture refusal = refusal(Arrays.copyOf(file, file.length - 7));
      assertThat(refusal)
          .hasMessageContaining("cut short")
          .hasMessageContaining("20 bytes")
          .hasMessageContaining("13 follow");
      assertThat(refusal.place()).isEqualTo("chunk 'data'");
    }

    @Test
    void everyFileCutAnywhere() {
      byte[] file = WavBytes.file(PCM, 16, 48_000, LEFT, RIGHT);
      for (int length = 0; length < file.length; length++) {
        assertThat(refusal(Arrays.copyOf(file, length)).getMessage()).isNotBlank();
      }
    }

    @ParameterizedTest
    @ValueSource(longs = {0xFFFFFFFFL, 0x7FFFFFFFL, 1L << 30})
    void sizesThatTheFileDoesNotHold(long size) {
      byte[] file =
          riff(fmt(PCM, 1, 48_000, 16), join(WavBytes.ascii("data"), le(4, size), new byte[8]));
      assertThat(refusal(file))
          .hasMessageContaining("should hold " + size + " bytes, but only 8 follow");
    }

    @Test
    void noSamples() {
      assertThat(refusal(riff(fmt(PCM, 1, 48_000, 16), chunk("data", new byte[0]))))
          .hasMessage("The WAV file holds no samples.");
      assertThat(refusal(riff(fmt(PCM, 1, 48_000, 16)))).hasMessageContaining("no 'data' chunk");
    }

    @Test
    void samplesThatAreNotDescribed() {
      assertThat(refusal(riff(chunk("data", new byte[4]))))
          .hasMessageContaining("how its samples are stored");
      assertThat(
              refusal(
                  riff(
                      fmt(PCM, 1, 48_000, 16),
                      fmt(PCM, 2, 48_000, 16),
                      chunk("data", new byte[4]))))
          .hasMessageContaining("twice");
    }

    @Test
    void aHalfSampleAtTheEnd() {
      assertThat(refusal(riff(fmt(PCM, 2, 48_000, 16), chunk("data", new byte[6]))))
          .hasMessageContaining("no multiple of 4");
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 1e300})
    void samplesThatAreNoNumberNamingWhich(double bad) {
      UnreadableCapture refusal =
          refusal(WavBytes.file(FLOAT, 64, 48_000, LEFT, new double[] {0, 0, 0, bad, 0}));
      assertThat(refusal.place()).isEqualTo("channel 2, sample 3");
      assertThat(refusal).hasMessageContaining(String.valueOf(bad));
    }

    @ParameterizedTest
    @CsvSource({
      "2, 1, 48000, 16, format 2",
      "85, 2, 48000, 16, format 85",
      "1, 0, 48000, 16, 0 channels",
      "1, 9, 48000, 16, 9 channels",
      "1, 1, 7999, 16, 7999 samples a second",
      "1, 1, 384001, 16, 384001 samples a second",
      "1, 1, 0, 16, 0 samples a second",
      "1, 1, -1, 16, 4294967295 samples a second",
      "1, 1, 48000, 12, integer samples of 12 bits",
      "1, 1, 48000, 0, integer samples of 0 bits",
      "3, 1, 48000, 16, floating-point samples of 16 bits"
    })
    void descriptionsItDoesNotReadNamingTheField(
        int tag, int channels, int rate, int bits, String what) {
      UnreadableCapture refusal =
          refusal(riff(fmt(tag, channels, rate, bits), chunk("data", new byte[48])));
      assertThat(refusal).hasMessageContaining(what);
      assertThat(refusal.place()).isEqualTo("chunk 'fmt '");
      assertThat(refusal.expected()).isNotBlank();
    }

    @Test
    void descriptionsThatContradictThemselvesOrAreShort() {
      byte[] fmt = fmt(PCM, 2, 48_000, 16);
      fmt[8 + 12] = 3;
      assertThat(refusal(riff(fmt, chunk("data", new byte[4]))))
          .hasMessageContaining("3 bytes for one sample");
      assertThat(refusal(riff(chunk("fmt ", new byte[14]), chunk("data", new byte[4]))))
          .hasMessageContaining("14 bytes long");
      byte[] shortExtensible =
          chunk("fmt ", Arrays.copyOfRange(WavBytes.extensible(PCM, 1, 48_000, 16), 8, 8 + 24));
      assertThat(refusal(riff(shortExtensible, chunk("data", new byte[4]))))
          .hasMessageContaining("only 24 bytes");
      byte[] otherKind = WavBytes.extensible(PCM, 1, 48_000, 16);
      otherKind[8 + 30] = 7;
      assertThat(refusal(riff(otherKind, chunk("data", new byte[4]))))
          .hasMessageContaining("sub-format");
    }
  }

  @Test
  void samplesOf16BitsLieWithinHalfAStep() {
    double[] signal = new Random(1).doubles(1000, -0.9, 0.9).toArray();
    float[] values =
        WavReader.read(WavBytes.file(PCM, 16, 48_000, signal)).channels().get(0).values();
    for (int n = 0; n < signal.length; n++) {
      assertThat((double) values[n]).isCloseTo(signal[n], within(0.5 / 32_768 + 1e-9));
    }
  }
}
