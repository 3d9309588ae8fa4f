package evenpair.products;

import java.io.StringReader;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.Node;

/**
 * YAML to its node graph, which knows line and column of every value; nothing is constructed from
 * tags. JSON is read by the same way, since it is YAML too. Size, depth and aliases are bounded, so
 * that no small text unfolds into a large one.
 */
final class YamlText {
  /** Largest text, bytes. */
  static final int LARGEST = 256 * 1024;

  private static final int DEEPEST = 20;
  private static final int MOST_ALIASES = 10;

  private YamlText() {}

  /**
   * @return the document's root
   * @throws UnreadableLimits if the text is not one YAML document of bounded size
   */
  static YamlValue parse(byte[] bytes, Problems problems) throws UnreadableLimits {
    if (bytes.length > LARGEST) {
      problems.add(1, 1, "", bytes.length + " bytes", "at most " + LARGEST + " bytes");
      problems.throwIfAny();
    }
    Node root = compose(decoded(bytes, problems), problems);
    if (root == null) {
      problems.add(1, 1, "", "an empty document", "a mapping");
    }
    problems.throwIfAny();
    return new YamlValue(root, "", problems);
  }

  private static String decoded(byte[] bytes, Problems problems) throws UnreadableLimits {
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return text.startsWith("\uFEFF") ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      problems.add(1, 1, "", "bytes that are not UTF-8", "text in UTF-8");
      throw new UnreadableLimits(problems.all());
    }
  }

  private static Node compose(String text, Problems problems) throws UnreadableLimits {
    LoaderOptions options = new LoaderOptions();
    options.setCodePointLimit(LARGEST);
    options.setNestingDepthLimit(DEEPEST);
    options.setMaxAliasesForCollections(MOST_ALIASES);
    options.setAllowRecursiveKeys(false);
    try {
      return new Yaml(options).compose(new StringReader(text));
    } catch (MarkedYAMLException e) {
      problems.add(e.getProblemMark(), "", e.getProblem(), "well-formed YAML");
    } catch (YAMLException e) {
      problems.add(1, 1, "", e.getMessage(), "one YAML document without large or deep repetition");
    }
    throw new UnreadableLimits(problems.all());
  }
}
