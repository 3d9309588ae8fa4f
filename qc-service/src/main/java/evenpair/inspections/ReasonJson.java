package evenpair.inspections;

import evenpair.tolerance.Reason;
import evenpair.tolerance.RegionResult;
import java.util.List;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** Reasons and region results as stored JSON: kind and numbers, no sentence. Doubles keep every bit. */
final class ReasonJson {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();
  private static final TypeReference<List<Reason>> REASONS = new TypeReference<>() {};
  private static final TypeReference<List<RegionResult>> REGIONS = new TypeReference<>() {};

  private ReasonJson() {}

  static String write(List<Reason> reasons) {
    return MAPPER.writeValueAsString(reasons);
  }

  static String writeRegions(List<RegionResult> results) {
    return MAPPER.writeValueAsString(results);
  }

  static List<Reason> read(String json) {
    return MAPPER.readValue(json, REASONS);
  }

  static List<RegionResult> readRegions(String json) {
    return MAPPER.readValue(json, REGIONS);
  }
}
