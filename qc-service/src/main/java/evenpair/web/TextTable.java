package evenpair.web;

import java.io.IOException;
import java.io.InputStream;
import java.util.Collections;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.core.io.support.ResourcePatternResolver;
import org.springframework.stereotype.Component;
import tools.jackson.core.JacksonException;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/**
 * Texts from {@code texts/<language>/*.json} on the class path: flat JSON objects, all files of a
 * language together one table. A key that stands twice, or a template that cannot be parsed, stops
 * the start. Where a language lacks a text the reader gets the English one; a test tells which are
 * lacking.
 */
@Component
class TextTable implements Texts {
  private static final Locale FALLBACK = Locale.ENGLISH;
  private static final TypeReference<Map<String, String>> FLAT = new TypeReference<>() {};

  private final Map<String, Map<String, String>> tables = new TreeMap<>();
  private final Map<String, Map<String, TextTemplate>> templates = new HashMap<>();

  TextTable() {
    this("classpath*:texts/");
  }

  /**
   * @param root where the language folders are, as a resource pattern that ends with a slash
   */
  TextTable(String root) {
    JsonMapper json =
        JsonMapper.builder().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION).build();
    ResourcePatternResolver resolver = new PathMatchingResourcePatternResolver();
    try {
      for (Resource file : resolver.getResources(root + "*/*.json")) {
        add(language(file), file, json);
      }
    } catch (IOException e) {
      throw new StartRefused(
          "The texts cannot be read: " + e.getMessage() + ".", "Mend the file, or build again.", e);
    }
    if (!tables.containsKey(FALLBACK.getLanguage())) {
      throw new StartRefused(
          "There are no English texts.", "Put them into texts/en, or build again.");
    }
    Map<String, String> english = Map.copyOf(tables.get(FALLBACK.getLanguage()));
    Map<String, TextTemplate> parsed = Map.copyOf(templates.get(FALLBACK.getLanguage()));
    templates.values().forEach(table -> parsed.forEach(table::putIfAbsent));
    tables.values().forEach(table -> english.forEach(table::putIfAbsent));
    tables.replaceAll((language, table) -> Collections.unmodifiableMap(table));
  }

  private void add(String language, Resource file, JsonMapper json) throws IOException {
    Map<String, String> table = tables.computeIfAbsent(language, l -> new TreeMap<>());
    Map<String, TextTemplate> parsed = templates.computeIfAbsent(language, l -> new HashMap<>());
    for (Map.Entry<String, String> text : read(file, json).entrySet()) {
      if (text.getValue() == null || table.put(text.getKey(), text.getValue()) != null) {
        throw refused(
            file, text.getKey(), text.getValue() == null ? "has no text" : "stands twice");
      }
      try {
        parsed.put(text.getKey(), TextTemplate.parse(text.getValue()));
      } catch (IllegalArgumentException e) {
        throw refused(file, text.getKey(), "is not a text: " + e.getMessage());
      }
    }
  }

  private static Map<String, String> read(Resource file, JsonMapper json) throws IOException {
    try (InputStream in = file.getInputStream()) {
      return json.readValue(in, FLAT);
    } catch (JacksonException e) {
      throw new IOException(file.getDescription() + ": " + e.getOriginalMessage(), e);
    }
  }

  private static StartRefused refused(Resource file, String key, String why) {
    return new StartRefused(
        "The text \"" + key + "\" of " + file.getDescription() + " " + why + ".",
        "Each key stands once in one file of its language.");
  }

  private static String language(Resource file) throws IOException {
    String[] path = file.getURL().getPath().split("/");
    return path[path.length - 2];
  }

  @Override
  public String render(Locale locale, String key, Map<String, ?> values) {
    Map<String, TextTemplate> table = templates.get(language(locale));
    try {
      return template(table, key)
          .render(values, word -> template(table, "word." + word).render(Map.of(), w -> w));
    } catch (IllegalArgumentException e) {
      throw new IllegalArgumentException("text " + key + ": " + e.getMessage(), e);
    }
  }

  private static TextTemplate template(Map<String, TextTemplate> table, String key) {
    TextTemplate template = table.get(key);
    if (template == null) {
      throw new IllegalArgumentException("there is no text " + key);
    }
    return template;
  }

  @Override
  public Map<String, String> table(Locale locale) {
    return tables.get(language(locale));
  }

  /**
   * @return the languages that there are tables for
   */
  Set<String> languages() {
    return tables.keySet();
  }

  private String language(Locale locale) {
    if (tables.containsKey(locale.toLanguageTag())) {
      return locale.toLanguageTag();
    }
    return tables.containsKey(locale.getLanguage()) ? locale.getLanguage() : FALLBACK.getLanguage();
  }
}
