package evenpair.inspections;

import evenpair.acoustics.Samples;
import evenpair.captures.CurveReader;
import evenpair.captures.UnreadableCapture;
import evenpair.captures.WavAudio;
import evenpair.captures.WavReader;
import evenpair.tolerance.Channel;
import evenpair.web.Refusal;
import java.util.Optional;
import java.util.function.Function;

/** Turns the file parts into two channels. What cannot be decoded is refused, naming the part, the place and what is expected. */
final class CaptureDecoder {
  private CaptureDecoder() {}

  /** @throws Refusal 422 for a file that cannot be decoded or has the wrong number of channels */
  static SentPair decode(SentParts parts) {
    Optional<SentFile> idleLeft = parts.file("idleLeft").map(CaptureDecoder::requireMono);
    Optional<SentFile> idleRight = parts.file("idleRight").map(CaptureDecoder::requireMono);
    Optional<SentFile> both = parts.file("both");
    if (both.isPresent()) {
      return twoChannels(both.get(), idleLeft, idleRight);
    }
    SentChannel left = oneChannel(Channel.LEFT, parts.file("left").orElseThrow());
    SentChannel right = oneChannel(Channel.RIGHT, parts.file("right").orElseThrow());
    return new SentPair(left, right, idleLeft, idleRight);
  }

  private static SentPair twoChannels(SentFile file, Optional<SentFile> idleLeft, Optional<SentFile> idleRight) {
    if (file.curve()) {
      throw refusal("unsupported-part", file, "is a curve", "a two-channel WAV; send curves as 'left' and 'right'");
    }
    WavAudio audio = decoded(file, WavReader::read);
    if (audio.channels().size() != 2) {
      throw channels(file, audio, "two channels, left first; send one-channel files as 'left' and 'right'");
    }
    return new SentPair(
        side(Channel.LEFT, file, SentChannel.Format.WAV_LEFT_OF_TWO, audio.channels().get(0)),
        side(Channel.RIGHT, file, SentChannel.Format.WAV_RIGHT_OF_TWO, audio.channels().get(1)),
        idleLeft,
        idleRight);
  }

  private static SentChannel side(Channel channel, SentFile file, SentChannel.Format format, Samples samples) {
    return new SentChannel(channel, file, format, new SentChannel.Recording(samples));
  }

  private static SentChannel oneChannel(Channel channel, SentFile file) {
    if (file.curve()) {
      var curve = decoded(file, CurveReader::read);
      return new SentChannel(channel, file, SentChannel.Format.CURVE, new SentChannel.Finished(curve));
    }
    return side(channel, file, SentChannel.Format.WAV, mono(file));
  }

  private static SentFile requireMono(SentFile file) {
    if (file.curve()) {
      throw refusal("unsupported-part", file, "is a curve", "a one-channel WAV of the idle noise");
    }
    mono(file);
    return file;
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
    return refusal("wrong-channels", file, "has " + count + (count == 1 ? " channel" : " channels"), expected);
  }

  private static <T> T decoded(SentFile file, Function<byte[], T> reader) {
    try {
      return reader.apply(file.bytes());
    } catch (UnreadableCapture e) {
      throw new Refusal(422, "unreadable-capture", "The part '" + file.part() + "' cannot be decoded: " + e.getMessage())
          .with("part", file.part())
          .with("place", e.place())
          .with("expected", e.expected());
    }
  }

  private static Refusal refusal(String type, SentFile file, String problem, String expected) {
    return new Refusal(422, type, "The part '" + file.part() + "' " + problem + "; expected: " + expected + ".")
        .with("part", file.part())
        .with("expected", expected);
  }
}
