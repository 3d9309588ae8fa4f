package evenpair.demo.screens;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** A sound calibrator's tone as a recording: mono, 16 bit, 48 kHz. */
final class Tone {
  private static final int RATE = 48_000;
  private static final int HEADER = 44;

  private Tone() {}

  /**
   * @param amplitude of full scale
   */
  static Path write(Path folder, double hz, double seconds, double amplitude) throws IOException {
    int samples = (int) (seconds * RATE);
    ByteBuffer wav = ByteBuffer.allocate(HEADER + 2 * samples).order(ByteOrder.LITTLE_ENDIAN);
    word(wav, "RIFF").putInt(HEADER - 8 + 2 * samples);
    word(word(wav, "WAVE"), "fmt ").putInt(16).putShort((short) 1).putShort((short) 1);
    wav.putInt(RATE).putInt(2 * RATE).putShort((short) 2).putShort((short) 16);
    word(wav, "data").putInt(2 * samples);
    for (int i = 0; i < samples; i++) {
      wav.putShort((short) Math.round(32767 * amplitude * Math.sin(2 * Math.PI * hz * i / RATE)));
    }
    return Files.write(folder.resolve("tone-" + hz + ".wav"), wav.array());
  }

  private static ByteBuffer word(ByteBuffer wav, String word) {
    return wav.put(word.getBytes(StandardCharsets.US_ASCII));
  }
}
