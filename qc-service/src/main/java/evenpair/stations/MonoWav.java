package evenpair.stations;

import evenpair.acoustics.Samples;
import evenpair.captures.UnreadableCapture;
import evenpair.captures.WavAudio;
import evenpair.captures.WavReader;
import evenpair.web.Refusal;

/**
 * A recording of one channel.
 *
 * @param fullScale the largest sample that its format can hold: 1 for float, 1 − 2^(1−bits) for
 *     integers
 */
record MonoWav(Samples samples, double fullScale) {
  /**
   * @param part the part's name in a refusal
   * @throws Refusal 422 if it cannot be decoded or has more than one channel
   */
  static MonoWav read(String part, byte[] bytes) {
    WavAudio audio = decode(part, bytes);
    if (audio.channels().size() != 1) {
      String problem =
          "The part '"
              + part
              + "' has "
              + audio.channels().size()
              + " channels; expected: one channel.";
      throw new Refusal(422, "wrong-channels", problem)
          .with("part", part)
          .with("expected", "one channel");
    }
    double fullScale = audio.floatingPoint() ? 1 : 1 - Math.pow(2, 1 - audio.bitsPerSample());
    return new MonoWav(audio.channels().get(0), fullScale);
  }

  private static WavAudio decode(String part, byte[] bytes) {
    try {
      return WavReader.read(bytes);
    } catch (UnreadableCapture e) {
      throw new Refusal(
              422,
              "unreadable-capture",
              "The part '" + part + "' cannot be decoded: " + e.getMessage())
          .with("part", part)
          .with("place", e.place())
          .with("expected", e.expected());
    }
  }
}
