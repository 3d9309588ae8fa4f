package evenpair.inspections;

import evenpair.acoustics.Samples;
import evenpair.captures.CurveReader;
import evenpair.captures.UnreadableCapture;
import evenpair.captures.WavAudio;
import evenpair.captures.WavReader;
import evenpair.inspections.SentChannel.Format;
import evenpair.tolerance.Channel;
import evenpair.web.Refusal;
import java.util.Optional;
import java.util.function.Function;

/**
 * Turns the file parts into two channels. What cannot be decoded is refused, naming the part, the
 * place and what is expected.
 */
final class CaptureDecoder {
  private CaptureDecoder() {}

  /**
   * @throws Refusal 422 for a file that cannot be decoded or has the wrong number of channels
   */
  static SentPair decode(SentParts parts) {
    return decode(parts::file);
  }

  /**
   * @param files by the name of the part: {@code both}, or {@code left} and {@code right}; {@code
   *     idleLeft} and {@code idleRight} as they were sent
   * @throws Refusal 422 as above
   */
  static SentPair decode(Function<String, Optional<SentFile>> files) {
    Optional<SentIdle> idleLeft = files.apply("idleLeft").map(CaptureDecoder::idle);
    Optional<SentIdle> idleRight = files.apply("idleRight").map(CaptureDecoder::idle);
    Optional<SentFile> both = files.apply("both");
    if (both.isPresent()) {
      return together(both.get(), idleLeft, idleRight);
    }
    SentChannel left = oneChannel(Channel.LEFT, files.apply("left").orElseThrow());
    SentChannel right = oneChannel(Channel.RIGHT, files.apply("right").orElseThrow());
    return new SentPair(left, right, Optional.empty(), idleLeft, idleRight);
  }

  /** Left, right, and in a third channel, if there is one, the electrical drive. */
  private static SentPair together(
      SentFile file, Optional<SentIdle> idleLeft, Optional<SentIdle> idleRight) {
    if (file.curve()) {
      throw refusal(
          "unsupported-part",
          file,
          "is a curve",
          "a two-channel WAV; send curves as 'left' and 'right'");
    }
    WavAudio audio = decoded(file, WavReader::read);
    int count = audio.channels().size();
    if (count != 2 && count != 3) {
      throw channels(
          file,
          audio,
          "two channels, left first, or three with the electrical drive last; send one-channel files as 'left' and 'right'");
    }
    boolean driven = count == 3;
    return new SentPair(
        side(
            Channel.LEFT,
            file,
            driven ? Format.WAV_LEFT_WITH_DRIVE : Format.WAV_LEFT_OF_TWO,
            audio.channels().get(0)),
        side(
            Channel.RIGHT,
            file,
            driven ? Format.WAV_RIGHT_WITH_DRIVE : Format.WAV_RIGHT_OF_TWO,
            audio.channels().get(1)),
        driven ? Optional.of(audio.channels().get(2)) : Optional.empty(),
        idleLeft,
        idleRight);
  }

  private static SentChannel side(Channel channel, SentFile file, Format format, Samples samples) {
    return new SentChannel(channel, file, format, new SentChannel.Recording(samples));
  }

  private static SentChannel oneChannel(Channel channel, SentFile file) {
    if (file.curve()) {
      var curve = decoded(file, CurveReader::read);
      return new SentChannel(channel, file, Format.CURVE, new SentChannel.Finished(curve));
    }
    return side(channel, file, Format.WAV, mono(file));
  }

  private static SentIdle idle(SentFile file) {
    if (file.curve()) {
      throw refusal("unsupported-part", file, "is a curve", "a one-channel WAV of the idle noise");
    }
    return new SentIdle(file, mono(file));
  }

  private static Samples mono(SentFile file) {
    WavAudio audio = decoded(file, WavReader::read);
    if (audio.channels().size() != 1) {
      throw channels(file, audio, "one channel; send a two-channel file as 'both', left first");
    }
    return audio.channels().get(0);
  }

  private static Refusal channels(SentFile file, WavAudio audio, String expected) {
    int count = audio.channels().size();
    return refusal(
        "wrong-channels", file, "has " + count + (count == 1 ? " channel" : " channels"), expected);
  }

  private static <T> T decoded(SentFile file, Function<byte[], T> reader) {
    try {
      return reader.apply(file.bytes());
    } catch (UnreadableCapture e) {
      throw new Refusal(
              422,
              "unreadable-capture",
              "The part '" + file.part() + "' cannot be decoded: " + e.getMessage())
          .with("part", file.part())
          .with("place", e.place())
          .with("expected", e.expected());
    }
  }

  private static Refusal refusal(String type, SentFile file, String problem, String expected) {
    return new Refusal(
            422,
            type,
            "The part '" + file.part() + "' " + problem + "; expected: " + expected + ".")
        .with("part", file.part())
        .with("expected", expected);
  }
}
