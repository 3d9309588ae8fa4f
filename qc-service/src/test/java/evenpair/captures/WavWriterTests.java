package evenpair.captures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import evenpair.acoustics.Samples;
import java.io.ByteArrayInputStream;
import java.util.HexFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;

class WavWriterTests {
  /**
   * By hand, from the layout of RIFF WAVE (tag 3 needs fmt with cbSize and a fact chunk): 4+4+4,
   * 8+18, 8+4, 8+8 = 66 bytes, hence the RIFF size 58 (0x3a). 48 000 = 0xbb80, 192 000 bytes a
   * second = 0x02ee00. 1.0f is 3f800000, −0.5f is bf000000.
   */
  @Test
  void writesTheChunksByteForByte() {
    byte[] file = WavWriter.float32(new Samples(new float[] {1, -0.5f}, 48_000));
    assertThat(HexFormat.of().formatHex(file))
        .isEqualTo(
            "52494646"
                + "3a000000"
                + "57415645"
                + "666d7420"
                + "12000000"
                + "0300"
                + "0100"
                + "80bb0000"
                + "00ee0200"
                + "0400"
                + "2000"
                + "0000"
                + "66616374"
                + "04000000"
                + "02000000"
                + "64617461"
                + "08000000"
                + "0000803f"
                + "000000bf");
  }

  @Test
  void isReadBackSampleForSample() {
    float[] left = {0, 0.25f, -1, 1, Float.MIN_VALUE};
    float[] right = {1, 2, 3, -4, 0};
    WavAudio audio =
        WavReader.read(WavWriter.float32(new Samples(left, 44_100), new Samples(right, 44_100)));
    assertThat(audio.floatingPoint()).isTrue();
    assertThat(audio.bitsPerSample()).isEqualTo(32);
    assertThat(audio.rateHz()).isEqualTo(44_100);
    assertThat(audio.channels().get(0).values()).containsExactly(left);
    assertThat(audio.channels().get(1).values()).containsExactly(right);
  }

  /** A reader that has nothing to do with ours: the Java platform's own. */
  @Test
  void isUnderstoodByThePlatformsOwnReader() throws Exception {
    byte[] file =
        WavWriter.float32(new Samples(new float[480], 96_000), new Samples(new float[480], 96_000));
    try (AudioInputStream in = AudioSystem.getAudioInputStream(new ByteArrayInputStream(file))) {
      assertThat(in.getFormat().getEncoding()).isEqualTo(AudioFormat.Encoding.PCM_FLOAT);
      assertThat(in.getFormat().getChannels()).isEqualTo(2);
      assertThat(in.getFormat().getSampleRate()).isEqualTo(96_000f);
      assertThat(in.getFrameLength()).isEqualTo(480);
    }
  }

  @Test
  void refusesChannelsOfDifferentLength() {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () ->
                WavWriter.float32(
                    new Samples(new float[3], 48_000), new Samples(new float[4], 48_000)))
        .withMessageContaining("same length");
  }

  @Test
  void refusesASampleThatIsNotANumber() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> WavWriter.float32(new Samples(new float[] {0, Float.NaN}, 48_000)))
        .withMessageContaining("sample 1");
  }
}
