package evenpair.products;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.yaml.snakeyaml.DumperOptions.ScalarStyle;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.nodes.Tag;

/**
 * One value of a YAML document with its place. A value of the wrong form is noted as a problem and
 * comes back empty.
 */
final class YamlValue {
  /**
   * Plain decimals only: YAML's octal, binary, base-60 and underscored numbers surprise, and .nan
   * and .inf are no limits.
   */
  private static final Pattern NUMBER =
      Pattern.compile("-?(0|[1-9]\\d{0,15})(\\.\\d{1,17})?([eE][-+]?\\d{1,2})?");

  private final Node node;
  private final String path;
  private final Problems problems;

  YamlValue(Node node, String path, Problems problems) {
    this.node = node;
    this.path = path;
    this.problems = problems;
  }

  /** Notes that this value is not what it should be. */
  void refuse(String expected) {
    problems.add(node.getStartMark(), path, found(), expected);
  }

  Optional<YamlMap> map() {
    if (node instanceof MappingNode mapping) {
      return Optional.of(new YamlMap(mapping, path, problems));
    }
    refuse("a mapping");
    return Optional.empty();
  }

  /**
   * @return true if this is that very word
   */
  boolean is(String word) {
    return scalar().filter(s -> s.getValue().equals(word)).isPresent();
  }

  boolean isMap() {
    return node instanceof MappingNode;
  }

  boolean isList() {
    return node instanceof SequenceNode;
  }

  /**
   * @return the elements; empty, with a problem noted, if this is no list or has another number of
   *     them
   */
  List<YamlValue> list(int fewest, int most) {
    if (!(node instanceof SequenceNode sequence)) {
      refuse("a list of " + count(fewest, most));
      return List.of();
    }
    List<Node> nodes = sequence.getValue();
    if (nodes.size() < fewest || nodes.size() > most) {
      problems.add(
          node.getStartMark(),
          path,
          "a list of " + nodes.size(),
          "a list of " + count(fewest, most));
      return List.of();
    }
    return IntStream.range(0, nodes.size())
        .mapToObj(i -> new YamlValue(nodes.get(i), path + "[" + i + "]", problems))
        .toList();
  }

  private static String count(int fewest, int most) {
    return fewest == most ? String.valueOf(most) : fewest + " to " + most;
  }

  Optional<Double> number(Range range) {
    Optional<Double> number =
        scalar().filter(this::isNumber).map(ScalarNode::getValue).map(Double::valueOf);
    if (number.filter(range::holds).isEmpty()) {
      refuse(range.words());
      return Optional.empty();
    }
    return number;
  }

  Optional<Integer> whole(int lowest, int highest) {
    Optional<Double> number =
        scalar().filter(this::isNumber).map(ScalarNode::getValue).map(Double::valueOf);
    if (number.filter(n -> n == Math.rint(n) && n >= lowest && n <= highest).isEmpty()) {
      refuse("a whole number from " + lowest + " to " + highest);
      return Optional.empty();
    }
    return number.map(Double::intValue);
  }

  Optional<String> text(Pattern pattern, String expected) {
    Optional<String> text =
        scalar()
            .filter(s -> !Tag.NULL.equals(s.getTag()))
            .map(ScalarNode::getValue)
            .filter(value -> pattern.matcher(value).matches());
    if (text.isEmpty()) {
      refuse(expected);
    }
    return text;
  }

  Optional<Boolean> truth() {
    return oneOf(Map.of("true", true, "false", false));
  }

  /**
   * @return the choice that the word stands for
   */
  <T> Optional<T> oneOf(Map<String, T> choices) {
    Optional<T> choice = scalar().map(ScalarNode::getValue).map(choices::get);
    if (choice.isEmpty()) {
      refuse("one of " + String.join(", ", choices.keySet().stream().sorted().toList()));
    }
    return choice;
  }

  private Optional<ScalarNode> scalar() {
    return node instanceof ScalarNode scalar ? Optional.of(scalar) : Optional.empty();
  }

  private boolean isNumber(ScalarNode scalar) {
    return scalar.getScalarStyle() == ScalarStyle.PLAIN
        && NUMBER.matcher(scalar.getValue()).matches();
  }

  private String found() {
    if (node instanceof ScalarNode scalar) {
      return Tag.NULL.equals(scalar.getTag()) ? "nothing" : Problems.quoted(scalar.getValue());
    }
    return node instanceof SequenceNode ? "a list" : "a mapping";
  }
}
