package evenpair.access;

import evenpair.access.SignInThrottle.Scope;
import evenpair.web.Caller;
import evenpair.web.Refusal;
import java.text.Normalizer;
import java.util.Optional;
import org.springframework.stereotype.Component;

/** Checks what somebody signs in with. */
@Component
class SignIn {
  private static final int LONGEST = 64;

  private final AccountStore accounts;
  private final Passwords passwords;
  private final SignInThrottle throttle;
  private final KnownBadges badges;

  SignIn(AccountStore accounts, Passwords passwords, SignInThrottle throttle, KnownBadges badges) {
    this.accounts = accounts;
    this.passwords = passwords;
    this.throttle = throttle;
    this.badges = badges;
  }

  /**
   * @param address where the request came from
   * @param station of the browser, if it is enrolled: the badge is then known there
   * @throws Refusal 401 if name and password do not belong together, whether there is such a name
   *     or not; 429 after too many attempts
   */
  AccountStore.Person byPassword(
      String name, String password, String address, Optional<String> station) {
    String plain = plain(name);
    String subnet = SignInThrottle.subnet(address);
    throttle.count(Scope.ADDRESS, subnet);
    throttle.count(Scope.NAME, plain);
    Optional<AccountStore.Person> person =
        accounts.findByName(plain).filter(AccountStore.Person::maySignIn);
    if (!passwords.matches(password, person.map(AccountStore.Person::hash).orElse(null))) {
      throw new Refusal(401, "wrong-name-or-password", "Name and password do not belong together.");
    }
    throttle.succeeded(Scope.NAME, plain);
    throttle.succeeded(Scope.ADDRESS, subnet);
    AccountStore.Person found = person.orElseThrow();
    station.ifPresent(bench -> badges.note(bench, found));
    return found;
  }

  /**
   * @throws Refusal 401 if it is no operator's badge; 429 after too many attempts at that station
   */
  AccountStore.Person byBadge(String badge, String station) {
    throttle.count(Scope.STATION, station);
    AccountStore.Person person =
        accounts
            .findByBadge(plain(badge))
            .filter(AccountStore.Person::maySignIn)
            .filter(found -> found.roles().contains(Caller.OPERATOR))
            .orElseThrow(
                () -> new Refusal(401, "unknown-badge", "This is not the badge of an operator."));
    throttle.succeeded(Scope.STATION, station);
    badges.note(station, person);
    return person;
  }

  /** As it is stored; what is too long to be one is nobody's. */
  private static String plain(String text) {
    String plain = text == null ? "" : Normalizer.normalize(text.strip(), Normalizer.Form.NFC);
    return plain.length() > 2 * LONGEST ? "" : plain;
  }
}
