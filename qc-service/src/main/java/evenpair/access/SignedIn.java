package evenpair.access;

import evenpair.web.Caller;
import evenpair.web.Refusal;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/** Who sends the request that is being handled. */
public interface SignedIn {
  /**
   * @return the signed-in person's random reference
   */
  Optional<UUID> person();

  /**
   * @return the station whose token or cookie came along, with or without a person
   */
  Optional<String> station();

  /**
   * @return what the caller may be taken for, {@link Caller#STATION} included
   */
  Set<Caller> roles();

  /**
   * @return the person's name as it may be shown to others
   */
  Optional<String> displayName();

  /**
   * Who signs: an author, an approver, an engineer who clears a station. The signed-in person
   * counts, whatever the request says; a name in it is only compared.
   *
   * @param field of the request that may name the person
   * @param named what it says; null or blank if it says nothing
   * @return the signed-in person's reference
   * @throws Refusal 403 if nobody is signed in, or somebody else than the one named
   */
  UUID signer(String field, String named);

  /**
   * @throws Refusal 403 if the caller is a station alone, and another one
   */
  void requireStation(String station);
}
