package evenpair.inspections.plant;

import evenpair.access.People;
import evenpair.access.SignedIn;
import evenpair.web.Caller;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;

/** Names of people, for those who may read them. */
@Component("plantNames")
class Names {
  private final People people;
  private final SignedIn signedIn;

  Names(People people, SignedIn signedIn) {
    this.people = people;
    this.signedIn = signedIn;
  }

  /**
   * @return whether the caller is an engineer or administrator
   */
  boolean readable() {
    Set<Caller> roles = signedIn.roles();
    return roles.contains(Caller.ENGINEER) || roles.contains(Caller.ADMINISTRATOR);
  }

  /**
   * @return null once the name has been erased
   */
  String of(UUID person) {
    return people.nameOf(person).orElse(null);
  }
}
