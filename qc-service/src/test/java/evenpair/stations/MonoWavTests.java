package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenpair.acoustics.Samples;
import evenpair.captures.WavWriter;
import evenpair.web.Refusal;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MonoWavTests {
  /**
   * The largest positive code of a signed integer of b bits is 2^(b−1) − 1, of a full scale of
   * 2^(b−1).
   */
  @ParameterizedTest
  @ValueSource(ints = {16, 24})
  void knowsTheLargestSampleOfAnIntegerFormat(int bits) {
    MonoWav wav = MonoWav.read("tone", pcm(bits, (1 << (bits - 1)) - 1));
    assertThat(wav.fullScale()).isEqualTo(1 - Math.pow(2, 1 - bits));
    assertThat((double) wav.samples().values()[0]).isEqualTo(wav.fullScale());
  }

  @Test
  void knowsThatFloatsReachOne() {
    byte[] file = WavWriter.float32(new Samples(new float[] {1}, 48_000));
    assertThat(MonoWav.read("tone", file).fullScale()).isEqualTo(1);
  }

  @Test
  void namesThePartThatHasTwoChannels() {
    Samples silence = new Samples(new float[4], 48_000);
    assertThatThrownBy(() -> MonoWav.read("markedLeft[2]", WavWriter.float32(silence, silence)))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("markedLeft[2]")
        .hasMessageContaining("2 channels");
  }

  /** A plain PCM file of one sample, written by hand. */
  private static byte[] pcm(int bits, int sample) {
    int bytes = bits / 8;
    ByteBuffer file = ByteBuffer.allocate(44 + 2 * bytes).order(ByteOrder.LITTLE_ENDIAN);
    file.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(file.capacity() - 8);
    file.put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII)).putInt(16);
    file.putShort((short) 1).putShort((short) 1).putInt(48_000).putInt(48_000 * bytes);
    file.putShort((short) bytes).putShort((short) bits);
    file.put("data".getBytes(StandardCharsets.US_ASCII)).putInt(2 * bytes);
    for (int shift = 0; shift < bits; shift += 8) {
      file.put((byte) (sample >> shift));
    }
    return file.array();
  }
}
