package evenpair.access;

import evenpair.web.Caller;
import evenpair.web.Refusal;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/** One engineer is signed in, for tests without a service. */
public record FixedCaller(UUID ref, String name) implements SignedIn {
  @Override
  public Optional<UUID> person() {
    return Optional.of(ref);
  }

  @Override
  public Optional<String> station() {
    return Optional.empty();
  }

  @Override
  public Set<Caller> roles() {
    return EnumSet.of(Caller.OPERATOR, Caller.ENGINEER);
  }

  @Override
  public Optional<String> displayName() {
    return Optional.of(name);
  }

  @Override
  public UUID signer(String field, String named) {
    if (named != null && !named.equals(name)) {
      throw new Refusal(403, "not-the-signer", "somebody else").with("field", field);
    }
    return ref;
  }

  @Override
  public void requireStation(String station) {
    // a person may measure at every station
  }
}
