package evenpair.products;

import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;

/** A mapping whose keys are asked for one by one; what nobody asked for is refused at the end. */
final class YamlMap {
  private final Map<String, Node> values = new HashMap<>();
  private final Map<String, Mark> places = new HashMap<>();
  private final Set<String> asked = new LinkedHashSet<>();
  private final Mark start;
  private final String path;
  private final Problems problems;

  YamlMap(MappingNode mapping, String path, Problems problems) {
    this.start = mapping.getStartMark();
    this.path = path;
    this.problems = problems;
    mapping.getValue().forEach(this::take);
  }

  private void take(NodeTuple tuple) {
    Mark mark = tuple.getKeyNode().getStartMark();
    if (!(tuple.getKeyNode() instanceof ScalarNode scalar)) {
      problems.add(mark, path, "a key that is a list or a mapping", "a word");
      return;
    }
    String key = scalar.getValue();
    if (values.putIfAbsent(key, tuple.getValueNode()) != null) {
      problems.add(
          mark,
          inside(key),
          "the key a second time",
          "each key once (first in line " + line(key) + ")");
      return;
    }
    places.put(key, mark);
  }

  private int line(String key) {
    return places.get(key).getLine() + 1;
  }

  private String inside(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }

  boolean has(String key) {
    asked.add(key);
    return values.containsKey(key);
  }

  /**
   * @return the key's value; empty, with a problem noted, if the key is missing
   */
  Optional<YamlValue> required(String key) {
    if (!has(key)) {
      problems.add(start, inside(key), "no such key", "the key " + key);
    }
    return optional(key);
  }

  Optional<YamlValue> optional(String key) {
    return has(key)
        ? Optional.of(new YamlValue(values.get(key), inside(key), problems))
        : Optional.empty();
  }

  /** Notes a problem of the mapping as a whole. */
  void refuse(String found, String expected) {
    problems.add(start, path, found, expected);
  }

  /** Notes a problem at a key that is there. */
  void refuse(String key, String found, String expected) {
    problems.add(
        values.containsKey(key) ? values.get(key).getStartMark() : start,
        inside(key),
        found,
        expected);
  }

  /**
   * To be called once every known key was asked for: notes each key that is not among them, with
   * the nearest one that is.
   */
  void done() {
    places.entrySet().stream()
        .filter(entry -> !asked.contains(entry.getKey()))
        .sorted(Comparator.comparingInt(entry -> entry.getValue().getIndex()))
        .forEach(entry -> unknown(entry.getKey(), entry.getValue()));
  }

  private void unknown(String key, Mark mark) {
    String nearest =
        asked.stream()
            .min(Comparator.comparingInt(known -> EditDistance.between(known, key)))
            .orElseThrow();
    String expected =
        "a known key (nearest: " + nearest + "; all: " + String.join(", ", asked) + ")";
    problems.add(mark, inside(key), "an unknown key", expected);
  }
}
