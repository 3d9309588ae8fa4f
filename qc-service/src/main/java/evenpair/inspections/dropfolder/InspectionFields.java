package evenpair.inspections.dropfolder;

import evenpair.inspections.dropfolder.DropFolderSettings.Defaults;
import evenpair.inspections.dropfolder.DropFolderSettings.Folder;
import evenpair.web.Refusal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tools.jackson.core.JacksonException;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * Makes the part {@code inspection} of what a rig says, in a JSON or in file names, and of what the
 * folder's settings say. Fields are only put together here; ingest checks them as it does for HTTP.
 */
final class InspectionFields {
  /** Fields of the JSON that name files; the others are those of an inspection. */
  static final List<String> FILES = List.of("left", "right", "both", "idleLeft", "idleRight");

  private static final JsonMapper STRICT =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private final Folder folder;

  InspectionFields(Folder folder) {
    this.folder = folder;
  }

  /** A rig's JSON: the files that it names, and the rest. */
  record Sidecar(Map<String, String> files, byte[] inspection) {}

  /**
   * @throws Refusal if it is no such JSON, names something that is no file of the folder, or speaks
   *     for another station
   */
  Sidecar sidecar(byte[] json) {
    ObjectNode object = object(json);
    Map<String, String> files = new LinkedHashMap<>();
    for (String part : FILES) {
      JsonNode named = object.remove(part);
      if (named != null && !named.isNull()) {
        files.put(part, fileName(part, named));
      }
    }
    if (files.values().stream().distinct().count() < files.size()) {
      throw refusal("invalid-field", "names one file twice", "another file for each part");
    }
    if (files.isEmpty()) {
      throw refusal(
          "missing-part",
          "names no file",
          "the fields \"left\" and \"right\", or \"both\", with the names of files beside it");
    }
    return new Sidecar(files, inspection(object));
  }

  private static ObjectNode object(byte[] json) {
    try {
      if (STRICT.readTree(json) instanceof ObjectNode object) {
        return object;
      }
    } catch (JacksonException e) {
      String place =
          "line " + e.getLocation().getLineNr() + ", column " + e.getLocation().getColumnNr();
      throw refusal(
              "invalid-json",
              "is not valid JSON: " + e.getOriginalMessage(),
              "one JSON object in UTF-8")
          .with("place", place);
    }
    throw refusal("invalid-json", "is no JSON object", "one JSON object in UTF-8");
  }

  private static String fileName(String part, JsonNode named) {
    String name = named.isString() ? named.stringValue() : "";
    if (!FileNames.plain(name) || !FileNames.capture(name)) {
      throw refusal(
              "invalid-field",
              "says in the field \"" + part + "\" what is no file of this folder",
              "the plain name of a .wav, .csv or .txt file beside it")
          .with("field", part);
    }
    return name;
  }

  private static Refusal refusal(String type, String problem, String expected) {
    return new Refusal(400, type, "The JSON " + problem + "; expected: " + expected + ".")
        .with("part", "inspection")
        .with("expected", expected);
  }

  /**
   * @param named fields as read from a file's name
   */
  byte[] named(Map<String, String> named) {
    ObjectNode object = STRICT.createObjectNode();
    named.forEach(
        (field, value) -> {
          if (field.equals("seating") && value.matches("\\d{1,6}")) {
            object.put(field, Integer.parseInt(value));
          } else {
            object.put(field, value);
          }
        });
    return inspection(object);
  }

  private byte[] inspection(ObjectNode object) {
    JsonNode station = object.path("station");
    if (!station.isMissingNode()
        && !station.isNull()
        && !station.equals(STRICT.valueToTree(folder.station()))) {
      throw refusal(
              "foreign-station",
              "says the station " + station + ", and this folder is that of " + folder.station(),
              "no station, or " + folder.station())
          .with("field", "station");
    }
    object.put("station", folder.station());
    Defaults defaults = folder.defaults();
    fill(object, "product", defaults.product());
    fill(object, "tuning", defaults.tuning());
    fill(object, "batch", defaults.batch());
    fill(object, "operator", defaults.operator());
    fill(object, "occasion", defaults.occasion());
    return STRICT.writeValueAsBytes(object);
  }

  private static void fill(ObjectNode object, String field, String otherwise) {
    if (otherwise != null
        && Optional.ofNullable(object.get(field)).map(JsonNode::isNull).orElse(true)) {
      object.put(field, otherwise);
    }
  }
}
