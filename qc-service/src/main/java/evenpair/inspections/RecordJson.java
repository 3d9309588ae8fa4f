package evenpair.inspections;

import evenpair.tolerance.MeasuredIdleNoise.Tone;
import evenpair.tolerance.Reason;
import evenpair.tolerance.RegionResult;
import java.util.List;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** What stands in JSON columns: kinds and numbers, no sentence. Doubles keep every bit. */
final class RecordJson {
  /** Records written before a number or a flag was known lack it; it is then 0 or false. */
  private static final JsonMapper MAPPER =
      JsonMapper.builder().disable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES).build();

  private static final TypeReference<List<Reason>> REASONS = new TypeReference<>() {};
  private static final TypeReference<List<RegionResult>> REGIONS = new TypeReference<>() {};
  private static final TypeReference<List<Tone>> TONES = new TypeReference<>() {};
  private static final TypeReference<List<Spread>> SPREADS = new TypeReference<>() {};

  private RecordJson() {}

  /**
   * @param list of reasons, region results, tones or spreads
   */
  static String write(List<?> list) {
    return MAPPER.writeValueAsString(list);
  }

  static List<Reason> read(String json) {
    return MAPPER.readValue(json, REASONS);
  }

  static List<RegionResult> readRegions(String json) {
    return MAPPER.readValue(json, REGIONS);
  }

  static List<Tone> readTones(String json) {
    return MAPPER.readValue(json, TONES);
  }

  static List<Spread> readSpreads(String json) {
    return MAPPER.readValue(json, SPREADS);
  }
}
