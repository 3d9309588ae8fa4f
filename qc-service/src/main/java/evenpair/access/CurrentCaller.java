package evenpair.access;

import evenpair.web.Caller;
import evenpair.web.Refusal;
import java.text.Normalizer;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;

/** Reads who calls from the request's security context. */
@Component
class CurrentCaller implements SignedIn {
  private static final Set<Caller> MEASURING = EnumSet.of(Caller.OPERATOR, Caller.ENGINEER);

  private static Optional<CallerToken> token() {
    return SecurityContextHolder.getContext().getAuthentication() instanceof CallerToken token
        ? Optional.of(token)
        : Optional.empty();
  }

  @Override
  public Optional<UUID> person() {
    return token().flatMap(CallerToken::person).map(CallerToken.KnownPerson::ref);
  }

  @Override
  public Optional<String> station() {
    return token().flatMap(CallerToken::station);
  }

  @Override
  public Set<Caller> roles() {
    return token().map(CallerToken::roles).orElseGet(() -> EnumSet.noneOf(Caller.class));
  }

  @Override
  public Optional<String> displayName() {
    return token().flatMap(CallerToken::person).map(CallerToken.KnownPerson::name);
  }

  @Override
  public UUID signer(String field, String named) {
    UUID person =
        person()
            .orElseThrow(
                () ->
                    new Refusal(
                        403,
                        "person-needed",
                        "This is signed by a person: sign in by name first."));
    if (named != null && !named.isBlank() && !displayName().orElse("").equals(plain(named))) {
      throw new Refusal(
              403,
              "not-the-signer",
              "\"" + field + "\" names somebody else than the person who is signed in.")
          .with("field", field)
          .with("expected", "the name of the signed-in person, or nothing");
    }
    return person;
  }

  private static String plain(String name) {
    return Normalizer.normalize(name.strip(), Normalizer.Form.NFC);
  }

  @Override
  public void requireStation(String station) {
    boolean byPerson = roles().stream().anyMatch(MEASURING::contains);
    Optional<String> own = station();
    if (!byPerson && own.isPresent() && !own.get().equals(station)) {
      throw new Refusal(
              403,
              "foreign-station",
              "This station's token may not act for station \"" + station + "\".")
          .with("field", "station")
          .with("expected", own.get());
    }
  }
}
