package evenpair.access;

import evenpair.web.Caller;
import evenpair.web.FromStation;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.security.authentication.AbstractAuthenticationToken;
import org.springframework.security.core.authority.SimpleGrantedAuthority;

/** Who calls: a person, a station, or a person at a station. Made anew for each request. */
final class CallerToken extends AbstractAuthenticationToken implements FromStation {
  private final transient KnownPerson person;
  private final String station;
  private final Set<Caller> roles;

  /** Somebody with a session. */
  record KnownPerson(UUID ref, String name) {}

  private CallerToken(KnownPerson person, String station, Set<Caller> roles) {
    super(roles.stream().map(role -> new SimpleGrantedAuthority(role.name())).toList());
    this.person = person;
    this.station = station;
    this.roles = roles;
    setAuthenticated(true);
  }

  /**
   * @param person null for a station alone
   * @param station null for a person alone
   * @param rolesOfPerson without {@link Caller#STATION}, which the station brings
   */
  static CallerToken of(KnownPerson person, String station, Set<Caller> rolesOfPerson) {
    EnumSet<Caller> roles = EnumSet.noneOf(Caller.class);
    roles.addAll(rolesOfPerson);
    if (station != null) {
      roles.add(Caller.STATION);
    }
    return new CallerToken(person, station, roles);
  }

  Optional<KnownPerson> person() {
    return Optional.ofNullable(person);
  }

  @Override
  public Optional<String> station() {
    return Optional.ofNullable(station);
  }

  Set<Caller> roles() {
    return EnumSet.copyOf(roles);
  }

  @Override
  public Object getCredentials() {
    return "";
  }

  @Override
  public Object getPrincipal() {
    return person == null ? "station " + station : person.ref();
  }
}
