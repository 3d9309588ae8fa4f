package evenpair.access;

import evenpair.web.Caller;
import evenpair.web.Refusal;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Roles of people as words. */
final class Roles {
  static final Set<Caller> OF_PEOPLE =
      EnumSet.of(Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR);

  private Roles() {}

  static List<String> words(Collection<Caller> roles) {
    return OF_PEOPLE.stream().filter(roles::contains).map(Roles::word).toList();
  }

  static String word(Caller role) {
    return lower(role);
  }

  static String lower(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT);
  }

  /**
   * @throws Refusal 400 for a word that is no role
   */
  static Set<Caller> read(Collection<String> words) {
    EnumSet<Caller> roles = EnumSet.noneOf(Caller.class);
    for (String word : words) {
      roles.add(
          OF_PEOPLE.stream()
              .filter(role -> word(role).equals(word))
              .findFirst()
              .orElseThrow(
                  () ->
                      new Refusal(400, "invalid-field", "There is no role \"" + word + "\".")
                          .with("field", "roles")
                          .with("choices", words(OF_PEOPLE))));
    }
    return roles;
  }
}
