package evenpair.tolerance;

import evenpair.acoustics.Grid;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Which text of the table tells a reason, and the values that it needs. Pure: the sentence itself
 * is rendered elsewhere.
 *
 * @param key such as {@code reason.window.above}
 * @param values by placeholder name: numbers in dB or Hz, words to look up under {@code word.…},
 *     names as they are
 */
public record ReasonText(String key, Map<String, Object> values) {
  private static final Set<String> CHECKS_OF_A_CHANNEL =
      Set.of(
          "distortion", "distortion-floor", "idle-noise", "idle-noise-floor", "idle-noise-station");

  public ReasonText {
    values = Map.copyOf(values);
  }

  /**
   * @return the text's key and values for any reason that this service can give
   */
  public static ReasonText of(Reason reason) {
    return new ReasonText(key(reason), values(reason));
  }

  private static String key(Reason reason) {
    String key = "reason." + reason.kind().word();
    return switch (reason.kind()) {
      case LEVEL ->
          key + (near(reason) ? ".near" : side(reason)) + also(reason) + conditional(reason);
      case WINDOW -> key + (near(reason) ? ".near" : side(reason)) + conditional(reason);
      case BALANCE ->
          key + (near(reason) ? ".near" : louder(reason)) + also(reason) + conditional(reason);
      case MATCH -> key + (near(reason) ? ".near" : louder(reason)) + conditional(reason);
      case NOISY -> key + channel(reason) + region(reason) + numbers(reason);
      case NO_DATA -> key + (reason.region() == null ? ".alignment" : ".region") + channel(reason);
      case NOT_JUDGED -> key + check(reason);
      case THD, HIGH_ORDER_DISTORTION -> key + channel(reason) + ofChannel(numbers(reason), reason);
      case WRONG_DRIVE -> key + channel(reason) + numbers(reason);
      case IDLE_NOISE -> key + channel(reason) + numbers(reason) + usb(reason);
      case LEAK -> key + channel(reason) + ofChannel(numbers(reason) + repeats(reason), reason);
      case SEAL -> key + channel(reason) + ofChannel(repeats(reason), reason);
      case DEPTH -> key + channel(reason) + depth(reason);
      case UNCERTAINTY_MISSING, GUARD_TOO_WIDE -> key + region(reason);
      case OTHER_TUNING,
          DOUBLED_TUNING,
          DOUBLED_SEATING,
          IDENTICAL_CHANNELS,
          LENGTHS_DIFFER,
          STATION_BLOCKED ->
          key;
      case OUTPUT_CALIBRATION_MISSING,
          OUTPUT_CALIBRATION_EXPIRED,
          CORRECTION_MISSING,
          CORRECTION_EXPIRED ->
          key;
      default -> key + channel(reason);
    };
  }

  /**
   * Above its upper or below its lower limit: which of the two was left is told by the order of the
   * numbers.
   */
  private static String side(Reason reason) {
    return reason.measuredDb() > reason.limitDb() ? ".above" : ".below";
  }

  private static String louder(Reason reason) {
    return reason.measuredDb() > 0 ? ".left-louder" : ".right-louder";
  }

  private static String also(Reason reason) {
    return reason.alsoRegions().isEmpty() ? "" : ".also";
  }

  private static String channel(Reason reason) {
    return reason.channel() == null ? ".pair" : ".channel";
  }

  private static String region(Reason reason) {
    return reason.region() == null ? "" : ".region";
  }

  private static String check(Reason reason) {
    boolean ofChannel = reason.channel() != null && CHECKS_OF_A_CHANNEL.contains(reason.region());
    return ofChannel || "polarity".equals(reason.region()) ? "." + reason.region() : ".other";
  }

  /** Inside its limit by less than the guard band, of a set that refuses that. */
  private static boolean near(Reason reason) {
    return reason.state() == CheckState.CONDITIONAL_PASS;
  }

  private static String conditional(Reason reason) {
    return reason.state() == CheckState.CONDITIONAL_FAIL ? ".conditional" : "";
  }

  private static String ofChannel(String variant, Reason reason) {
    return reason.channel() == null ? "" : variant;
  }

  private static String repeats(Reason reason) {
    return reason.repeats() ? ".repeats" : "";
  }

  private static String usb(Reason reason) {
    return reason.channel() == null || numbers(reason).isEmpty() || reason.usbLinesHz().isEmpty()
        ? ""
        : ".usb";
  }

  private static String depth(Reason reason) {
    if (numbers(reason).isEmpty()) {
      return "";
    }
    return reason.measuredDb() > 0 ? ".deep" : ".shallow";
  }

  private static String numbers(Reason reason) {
    return reason.measuredDb() == null || reason.limitDb() == null ? "" : ".numbers";
  }

  private static Map<String, Object> values(Reason reason) {
    Map<String, Object> values = new LinkedHashMap<>();
    put(values, "region", reason.region());
    put(values, "frequency", label(reason.frequencyHz()));
    put(values, "measured", reason.measuredDb());
    put(values, "limit", reason.limitDb());
    if (reason.channel() != null) {
      values.put("channel", reason.channel().word());
      for (String thing : List.of("earpiece", "recording", "microphone")) {
        values.put(thing, reason.channel().word() + '-' + thing);
      }
    }
    if (reason.measuredDb() != null && reason.limitDb() != null) {
      values.put("excess", Math.abs(reason.measuredDb() - reason.limitDb()));
      values.put("difference", Math.abs(reason.measuredDb()));
      values.put("allowed", Math.abs(reason.limitDb()));
    }
    values.put("regions", joined(reason.alsoRegions()));
    put(values, "tuning", reason.otherTuning());
    put(values, "guard", reason.guardDb());
    values.put("lines", kilohertz(reason.usbLinesHz()));
    return values;
  }

  /** People read the preferred number: 8.5 kHz, not the exact 8413.95 Hz. */
  private static Double label(Double hz) {
    return hz == null ? null : Grid.label(Grid.nearest(hz));
  }

  private static String joined(List<String> regions) {
    return String.join(", ", regions);
  }

  /** Frames sound at whole kilohertz. */
  private static String kilohertz(List<Double> hz) {
    return joined(
        hz.stream().map(line -> Long.toString(Math.round(line / 1000))).distinct().toList());
  }

  private static void put(Map<String, Object> values, String name, Object value) {
    if (value != null) {
      values.put(name, value);
    }
  }
}
