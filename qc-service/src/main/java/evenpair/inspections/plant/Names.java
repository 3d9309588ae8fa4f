package evenpair.inspections.plant;

import evenpair.access.People;
import evenpair.web.Caller;
import java.util.Set;
import java.util.UUID;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;

/** Names of people, for those who may read them. */
@Component("plantNames")
class Names {
  private static final Set<String> MAY_READ =
      Set.of(Caller.ENGINEER.name(), Caller.ADMINISTRATOR.name());

  private final People people;

  Names(People people) {
    this.people = people;
  }

  /**
   * @return whether the caller is an engineer or administrator
   */
  boolean readable() {
    Authentication caller = SecurityContextHolder.getContext().getAuthentication();
    return caller != null
        && caller.getAuthorities().stream()
            .anyMatch(granted -> MAY_READ.contains(granted.getAuthority()));
  }

  /**
   * @return null once the name has been erased
   */
  String of(UUID person) {
    return people.nameOf(person).orElse(null);
  }
}
