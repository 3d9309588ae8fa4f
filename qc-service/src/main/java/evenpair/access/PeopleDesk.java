package evenpair.access;

import evenpair.web.Caller;
import evenpair.web.Refusal;
import java.text.Normalizer;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** What administrators do about people. */
@Component
class PeopleDesk {
  private static final int LONGEST_BADGE = 64;

  private final AccountStore accounts;
  private final Passwords passwords;
  private final Sessions sessions;
  private final KnownBadges badges;

  PeopleDesk(AccountStore accounts, Passwords passwords, Sessions sessions, KnownBadges badges) {
    this.accounts = accounts;
    this.passwords = passwords;
    this.sessions = sessions;
    this.badges = badges;
  }

  /** A person with a password that is known for this once. */
  record Opened(AccountStore.Person person, String password) {}

  List<AccountStore.Person> list(String after, int most) {
    return accounts.list(after, most);
  }

  /**
   * @throws Refusal 404 if there is no such person, or the name was erased
   */
  AccountStore.Person require(UUID person) {
    return accounts
        .find(person)
        .orElseThrow(
            () -> new Refusal(404, "unknown-person", "There is no person " + person + " here."));
  }

  /**
   * @throws Refusal 400 for what is no name or badge, 409 if name or badge are taken
   */
  Opened add(String name, String badge, Set<Caller> roles) {
    String password = Secrets.password();
    UUID person = accounts.add(name, badge(badge), roles, passwords.hash("password", password));
    return new Opened(require(person), password);
  }

  /**
   * @throws Refusal 404, 409 if the badge is taken, the person has no account, or nobody would be
   *     left to look after people
   */
  @Transactional
  AccountStore.Person change(UUID person, Set<Caller> roles, String badge, boolean active) {
    AccountStore.Person before = requireAccount(person);
    if (!active || !roles.contains(Caller.ADMINISTRATOR)) {
      accounts.requireAnotherAdministrator(person);
    }
    accounts.setRoles(person, roles, active);
    if (!Objects.equals(before.badge(), badge(badge))) {
      accounts.setBadge(person, badge(badge));
      badges.forget(person);
    }
    if (!active) {
      sessions.endAll(person);
    }
    return require(person);
  }

  /**
   * @throws Refusal 404, 409 if the person has no account
   */
  @Transactional
  Opened reset(UUID person) {
    requireAccount(person);
    String password = Secrets.password();
    accounts.setPassword(person, passwords.hash("password", password));
    sessions.endAll(person);
    return new Opened(require(person), password);
  }

  /**
   * @throws Refusal 404, 409 if a duty to keep records binds the name, or nobody would be left to
   *     look after people
   */
  @Transactional
  void erase(UUID person) {
    if (!require(person).erasable()) {
      throw new Refusal(
          409, "not-erasable", "A duty to keep records still binds this name to its signature.");
    }
    accounts.requireAnotherAdministrator(person);
    accounts.erase(person);
    badges.forget(person);
    sessions.endAll(person);
  }

  private AccountStore.Person requireAccount(UUID person) {
    AccountStore.Person found = require(person);
    if (!found.hasAccount()) {
      throw new Refusal(
          409, "no-account", "This person is only named by a rig: add an account of that name.");
    }
    return found;
  }

  private static String badge(String badge) {
    String plain = badge == null ? "" : Normalizer.normalize(badge.strip(), Normalizer.Form.NFC);
    if (plain.codePointCount(0, plain.length()) > LONGEST_BADGE
        || plain.codePoints().anyMatch(Character::isISOControl)) {
      throw new Refusal(400, "invalid-field", "A badge has 1 to 64 characters.")
          .with("field", "badge")
          .with("expected", "1 to 64 characters, or none");
    }
    return plain.isEmpty() ? null : plain;
  }
}
