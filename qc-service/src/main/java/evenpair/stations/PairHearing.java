package evenpair.stations;

import evenpair.acoustics.Curve;
import evenpair.captures.CaptureStore;
import evenpair.captures.CurveReader;
import evenpair.captures.Stimuli.Stimulus;
import evenpair.captures.UnreadableCapture;
import evenpair.stations.StationRegister.Newest;
import evenpair.tolerance.Channel;
import evenpair.tolerance.LimitSet;
import evenpair.web.FormParts;
import evenpair.web.Refusal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import org.springframework.stereotype.Component;

/**
 * Measures a pair on a station: parts {@code left} and {@code right}, each a WAV of a stimulus or a
 * finished curve, become levels in dB SPL at the set's drive, the station's own left/right
 * difference taken out, as an inspection stores them.
 */
@Component
class PairHearing {
  private final CaptureAnalysis analysis;
  private final CaptureStore store;
  private final TrustSettings settings;

  PairHearing(CaptureAnalysis analysis, CaptureStore store, TrustSettings settings) {
    this.analysis = analysis;
    this.store = store;
    this.settings = settings;
  }

  /** One side as sent; either samples or a curve. */
  private record Side(String part, byte[] bytes, MonoWav wav, Curve curve) {
    boolean recorded() {
      return wav != null;
    }
  }

  /**
   * @param newest the station's calibrations and correction at that instant
   * @throws Refusal 400 for a missing part, 409 for a station that cannot be trusted with it, 422
   *     for parts that cannot be decoded or analysed, another ear simulator or another drive
   */
  MeasuredSides hear(FormParts parts, String stimulus, Newest newest, LimitSet set, Instant at) {
    return measure(sides(parts), stimulus, newest, set, at, true);
  }

  /**
   * Certified curves: as {@link #hear}, but a finished curve is taken as its certificate says it,
   * with no station's correction.
   */
  MeasuredSides certified(
      FormParts parts, String stimulus, Newest newest, LimitSet set, Instant at) {
    return measure(sides(parts), stimulus, newest, set, at, false);
  }

  private MeasuredSides measure(
      Map<Channel, Side> sides,
      String stimulus,
      Newest newest,
      LimitSet set,
      Instant at,
      boolean correctCurves) {
    boolean recorded = sides.values().stream().anyMatch(Side::recorded);
    if (recorded || correctCurves) {
      TrustedChain.require(newest, set, recorded, at);
    }
    Stations.Chain chain = newest.toChain();
    Map<Channel, Curve> levels = new EnumMap<>(Channel.class);
    sides.forEach(
        (channel, side) -> {
          Curve level = level(side, channel, stimulus, chain, set);
          boolean correct = side.recorded() || correctCurves;
          levels.put(channel, correct ? chain.corrected(level, channel) : level);
        });
    return keep(sides, levels);
  }

  private MeasuredSides keep(Map<Channel, Side> sides, Map<Channel, Curve> levels) {
    return new MeasuredSides(
        levels.get(Channel.LEFT).toFloats(),
        levels.get(Channel.RIGHT).toFloats(),
        store.keep(sides.get(Channel.LEFT).bytes()),
        store.keep(sides.get(Channel.RIGHT).bytes()));
  }

  private Curve level(
      Side side, Channel channel, String stimulusName, Stations.Chain chain, LimitSet set) {
    if (!side.recorded()) {
      return side.curve();
    }
    Stimulus stimulus = analysis.stimulus(stimulusName, side.wav().samples().rateHz());
    requireDrive(stimulus, chain, set);
    Curve response =
        CaptureAnalysis.response(side.part(), side.wav().samples(), analysis.analyser(stimulus))
            .level();
    return chain.soundPressureLevel(response, channel, set.drive());
  }

  private void requireDrive(Stimulus stimulus, Stations.Chain chain, LimitSet set) {
    double played = 20 * Math.log10(stimulus.sweep().amplitude());
    double wanted = 20 * Math.log10(chain.digitalPeak(set.drive()));
    if (!(Math.abs(played - wanted) <= settings.driveToleranceDb())) {
      throw new Refusal(
              422,
              "wrong-drive",
              String.format(
                  Locale.ROOT,
                  "The stimulus '%s' peaks at %.2f dB re full scale; the drive of '%s' in tuning '%s' needs %.2f dB on this"
                      + " station.",
                  stimulus.name(),
                  played,
                  set.product(),
                  set.tuning(),
                  wanted))
          .with("measured", played)
          .with("expected", wanted);
    }
  }

  private static Map<Channel, Side> sides(FormParts parts) {
    Map<Channel, Side> sides = new EnumMap<>(Channel.class);
    for (Channel channel : Channel.values()) {
      sides.put(
          channel,
          side(
              channel.word(),
              parts.one(channel.word(), "a mono WAV of the stimulus, or a curve as text")));
    }
    if (Arrays.equals(sides.get(Channel.LEFT).bytes(), sides.get(Channel.RIGHT).bytes())) {
      throw new Refusal(
              422,
              "same-capture-twice",
              "The parts 'left' and 'right' are byte for byte the same; two recordings never are.")
          .with("part", "right")
          .with("expected", "a recording of its own");
    }
    return sides;
  }

  private static Side side(String part, byte[] bytes) {
    if (startsWith(bytes, "RIFF")) {
      return new Side(part, bytes, MonoWav.read(part, bytes), null);
    }
    try {
      return new Side(part, bytes, null, CurveReader.read(bytes).level());
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

  private static boolean startsWith(byte[] bytes, String magic) {
    byte[] wanted = magic.getBytes(StandardCharsets.US_ASCII);
    return bytes.length >= wanted.length
        && Arrays.equals(bytes, 0, wanted.length, wanted, 0, wanted.length);
  }
}
