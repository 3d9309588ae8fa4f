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
  private static final Set<String> NAMED_CHECKS =
      Set.of("distortion", "idle-noise", "guarded-decision", "polarity");

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
      case LEVEL -> key + side(reason) + also(reason);
      case WINDOW -> key + side(reason);
      case BALANCE -> key + louder(reason) + also(reason);
      case MATCH -> key + louder(reason);
      case NOISY -> key + channel(reason) + region(reason) + numbers(reason);
      case NO_DATA -> key + (reason.region() == null ? ".alignment" : ".region") + channel(reason);
      case NOT_JUDGED -> key + check(reason);
      case THD, HIGH_ORDER_DISTORTION -> key + channel(reason);
      case WRONG_DRIVE, IDLE_NOISE -> key + channel(reason) + numbers(reason);
      case OTHER_TUNING, GUARD_TOO_WIDE, IDENTICAL_CHANNELS, LENGTHS_DIFFER, STATION_BLOCKED -> key;
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
    return reason.region() != null && NAMED_CHECKS.contains(reason.region())
        ? "." + reason.region()
        : ".other";
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
    return values;
  }

  /** People read the preferred number: 8.5 kHz, not the exact 8413.95 Hz. */
  private static Double label(Double hz) {
    return hz == null ? null : Grid.label(Grid.nearest(hz));
  }

  private static String joined(List<String> regions) {
    return String.join(", ", regions);
  }

  private static void put(Map<String, Object> values, String name, Object value) {
    if (value != null) {
      values.put(name, value);
    }
  }
}
