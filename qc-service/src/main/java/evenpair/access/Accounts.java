package evenpair.access;

import evenpair.web.Caller;
import java.util.Set;
import java.util.UUID;

/** Accounts of people, for whoever sets up a service from the same process. */
public interface Accounts {
  /**
   * Lets a person sign in by name and password with these roles from now on; one who could already
   * gets both anew.
   *
   * @param name 1 to 64 characters
   * @param password at least 12 characters
   * @param roles of people
   * @return the person's reference
   */
  UUID open(String name, String password, Set<Caller> roles);
}
