package evenpair.web;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/** The table of texts, for the screens. */
@RestController
@AllowedFor(Caller.ANYONE)
class TextsController {
  private final TextTable texts;

  TextsController(TextTable texts) {
    this.texts = texts;
  }

  @GetMapping("/api/texts/{language}")
  Map<String, String> table(@PathVariable String language) {
    if (!texts.languages().contains(language)) {
      throw new Refusal(404, "unknown-language", "There are no texts in \"" + language + "\".")
          .with("choices", List.copyOf(texts.languages()));
    }
    return texts.table(Locale.forLanguageTag(language));
  }
}
