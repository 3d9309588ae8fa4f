package evenpair.traceability;

import evenpair.access.People;
import evenpair.traceability.StoryEvent.Who;
import evenpair.web.Texts;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Renders a story for one reader: in his language, and with names only if he may see them. */
final class StoryWords {
  private final Texts texts;
  private final Locale locale;
  private final People people;
  private final boolean names;

  /**
   * @param names whether the reader may see who people are
   */
  StoryWords(Texts texts, Locale locale, People people, boolean names) {
    this.texts = texts;
    this.locale = locale;
    this.people = people;
    this.names = names;
  }

  Locale locale() {
    return locale;
  }

  String text(String key, Map<String, ?> values) {
    return texts.render(locale, "story." + key, values);
  }

  /**
   * @param role the last part of a text {@code story.role.<role>}
   * @param person null if nobody is known
   */
  Who who(String role, UUID person) {
    return person == null
        ? null
        : new Who(text("role." + role, Map.of()), name(person).orElse(null));
  }

  /**
   * @return the person's name if the reader may see it and it has not been erased
   */
  Optional<String> name(UUID person) {
    return names && person != null ? people.nameOf(person) : Optional.empty();
  }
}
