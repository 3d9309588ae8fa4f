package evenpair.stations;

import evenpair.ledger.Digests;
import evenpair.tolerance.Channel;
import evenpair.web.FormParts;
import evenpair.web.Refusal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The captures of a swap study as sent: the same number of seatings on both channels, enough of
 * each orientation.
 *
 * @param marked by simulator channel, in seating order, earpieces as marked
 * @param swapped the same with the earpieces swapped
 */
record SentStudy(Map<Channel, List<Capture>> marked, Map<Channel, List<Capture>> swapped) {
  /** Four files each, all in one request, which may have 50 parts. */
  static final int MOST_SEATINGS = 10;

  /**
   * @param part the part and its place, such as {@code markedLeft[2]}, counted from 1
   * @param bytes of a mono WAV
   */
  record Capture(String part, byte[] bytes, MonoWav wav) {}

  /**
   * @throws Refusal 422 naming the part that is missing, one too many, undecodable, at another
   *     sample rate or byte for byte the same as another
   */
  static SentStudy of(FormParts parts, StationSettings settings) {
    SentStudy study = new SentStudy(orientation(parts, "marked"), orientation(parts, "swapped"));
    study.refuseUnequalCounts("marked", study.marked, settings.correctionSeatings());
    study.refuseUnequalCounts("swapped", study.swapped, settings.correctionSeatings());
    study.refuseRepeated();
    study.refuseOtherRates();
    return study;
  }

  /**
   * @return every capture: marked before swapped, left before right, in seating order
   */
  List<Capture> all() {
    List<Capture> all = new ArrayList<>();
    marked.values().forEach(all::addAll);
    swapped.values().forEach(all::addAll);
    return all;
  }

  double rateHz() {
    return marked.get(Channel.LEFT).get(0).wav().samples().rateHz();
  }

  static String partName(String orientation, Channel channel) {
    return orientation + (channel == Channel.LEFT ? "Left" : "Right");
  }

  private static Map<Channel, List<Capture>> orientation(FormParts parts, String orientation) {
    Map<Channel, List<Capture>> byChannel = new EnumMap<>(Channel.class);
    for (Channel channel : Channel.values()) {
      String name = partName(orientation, channel);
      List<Capture> captures = new ArrayList<>();
      for (byte[] bytes : parts.all(name)) {
        String place = name + "[" + (captures.size() + 1) + "]";
        captures.add(new Capture(place, bytes, MonoWav.read(place, bytes)));
      }
      byChannel.put(channel, captures);
    }
    return byChannel;
  }

  private void refuseUnequalCounts(
      String orientation, Map<Channel, List<Capture>> byChannel, int least) {
    for (Channel channel : Channel.values()) {
      int count = byChannel.get(channel).size();
      String part = partName(orientation, channel);
      if (count < least || count > MOST_SEATINGS) {
        throw refusal(
                "seatings-wanted",
                part,
                String.format(
                    Locale.ROOT,
                    "The part '%s' is there %d times; a swap study needs %d to %d seatings in each orientation, in seating order.",
                    part,
                    count,
                    least,
                    MOST_SEATINGS))
            .with("expected", least + " to " + MOST_SEATINGS);
      }
    }
    int left = byChannel.get(Channel.LEFT).size();
    int right = byChannel.get(Channel.RIGHT).size();
    if (left != right) {
      String part = partName(orientation, left < right ? Channel.LEFT : Channel.RIGHT);
      throw refusal(
              "seatings-unequal",
              part,
              String.format(
                  Locale.ROOT,
                  "There are %d seatings of the left and %d of the right channel (%s); each seating needs both.",
                  left,
                  right,
                  orientation))
          .with("expected", Math.max(left, right));
    }
  }

  private void refuseRepeated() {
    Map<String, String> seen = new HashMap<>();
    for (Capture capture : all()) {
      String other = seen.putIfAbsent(Digests.of(capture.bytes()), capture.part());
      if (other != null) {
        throw refusal(
                "same-capture-twice",
                capture.part(),
                "The parts '"
                    + other
                    + "' and '"
                    + capture.part()
                    + "' are byte for byte the same; two recordings never are.")
            .with("expected", "a recording of its own");
      }
    }
  }

  private void refuseOtherRates() {
    for (Capture capture : all()) {
      double rate = capture.wav().samples().rateHz();
      if (rate != rateHz()) {
        throw refusal(
                "sample-rates-differ",
                capture.part(),
                String.format(
                    Locale.ROOT,
                    "The part '%s' has %.0f samples a second, '%s' has %.0f; all need the same.",
                    capture.part(),
                    rate,
                    marked.get(Channel.LEFT).get(0).part(),
                    rateHz()))
            .with("expected", rateHz());
      }
    }
  }

  private static Refusal refusal(String type, String part, String detail) {
    return new Refusal(422, type, detail).with("part", part);
  }
}
