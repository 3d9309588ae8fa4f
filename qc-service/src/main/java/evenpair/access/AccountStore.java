package evenpair.access;

import evenpair.web.Caller;
import evenpair.web.Refusal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** People in the tables {@code person} and {@code account}. */
@Component
class AccountStore implements Accounts {
  private static final String SELECT =
      """
      select person.ref, person.name, person.badge, person.erasable, account.person is not null as has_account,
             account.password_hash, coalesce(account.roles, '{}') as roles, coalesce(account.active, false) as active
        from person left join account on account.person = person.ref
       where person.erased_at is null
      """;

  private final JdbcClient jdbc;
  private final People people;
  private final Passwords passwords;
  private final Clock clock;

  AccountStore(JdbcClient jdbc, People people, Passwords passwords, Clock clock) {
    this.jdbc = jdbc;
    this.people = people;
    this.passwords = passwords;
    this.clock = clock;
  }

  /**
   * A person who has not been erased.
   *
   * @param hasAccount false for one who is only named by a rig
   * @param hash null without a password
   */
  record Person(
      UUID ref,
      String name,
      String badge,
      boolean erasable,
      boolean hasAccount,
      String hash,
      Set<Caller> roles,
      boolean active) {
    boolean maySignIn() {
      return hasAccount && active;
    }
  }

  Optional<Person> find(UUID ref) {
    return jdbc.sql(SELECT + " and person.ref = ?").param(ref).query(AccountStore::read).optional();
  }

  Optional<Person> findByName(String name) {
    return jdbc.sql(SELECT + " and person.name = ?")
        .param(name)
        .query(AccountStore::read)
        .optional();
  }

  Optional<Person> findByBadge(String badge) {
    return jdbc.sql(SELECT + " and person.badge = ?")
        .param(badge)
        .query(AccountStore::read)
        .optional();
  }

  /**
   * @param after name of the last one seen, empty for the beginning
   * @return those who have a name, in its order
   */
  List<Person> list(String after, int most) {
    return jdbc.sql(SELECT + " and person.name > ? order by person.name limit ?")
        .params(after, most)
        .query(AccountStore::read)
        .list();
  }

  private static Person read(ResultSet row, int number) throws SQLException {
    return new Person(
        row.getObject("ref", UUID.class),
        row.getString("name"),
        row.getString("badge"),
        row.getBoolean("erasable"),
        row.getBoolean("has_account"),
        row.getString("password_hash"),
        Roles.read(List.of((String[]) row.getArray("roles").getArray())),
        row.getBoolean("active"));
  }

  /**
   * @param hash null for somebody who signs in by badge only
   * @throws Refusal 409 if that person has an account already, or the badge is another's
   */
  @Transactional
  UUID add(String name, String badge, Set<Caller> roles, String hash) {
    UUID person = people.refer(name);
    if (find(person).orElseThrow().hasAccount()) {
      throw new Refusal(409, "name-taken", "There is an account of that name already.")
          .with("field", "name");
    }
    insert(person, roles, hash);
    if (badge != null) {
      setBadge(person, badge);
    }
    return person;
  }

  private void insert(UUID person, Set<Caller> roles, String hash) {
    OffsetDateTime now = now();
    jdbc.sql(
            "insert into account (person, password_hash, roles, made_at, password_set_at) values (?, ?, ?, ?, ?)")
        .params(person, hash, words(roles), now, hash == null ? null : now)
        .update();
  }

  @Override
  @Transactional
  public UUID open(String name, String password, Set<Caller> roles) {
    String hash = passwords.hash("password", password);
    UUID person = people.refer(name);
    if (find(person).orElseThrow().hasAccount()) {
      setPassword(person, hash);
      setRoles(person, roles, true);
    } else {
      insert(person, roles, hash);
    }
    return person;
  }

  void setPassword(UUID person, String hash) {
    jdbc.sql("update account set password_hash = ?, password_set_at = ? where person = ?")
        .params(hash, now(), person)
        .update();
  }

  /**
   * @param badge null to take it away
   * @throws Refusal 409 if it is another's
   */
  void setBadge(UUID person, String badge) {
    try {
      jdbc.sql("update person set badge = ? where ref = ?").params(badge, person).update();
    } catch (DuplicateKeyException e) {
      throw new Refusal(409, "badge-taken", "Another person has this badge.")
          .with("field", "badge");
    }
  }

  /** To be called with {@link #requireAnotherAdministrator} in one transaction. */
  void setRoles(UUID person, Set<Caller> roles, boolean active) {
    jdbc.sql("update account set roles = ?, active = ? where person = ?")
        .params(words(roles), active, person)
        .update();
  }

  /** Name and badge go, the account too; what the person signed keeps the random reference. */
  void erase(UUID person) {
    jdbc.sql(
            "update account set active = false, roles = '{}', password_hash = null, password_set_at = null where person = ?")
        .param(person)
        .update();
    jdbc.sql("update person set name = null, badge = null, erased_at = ? where ref = ?")
        .params(now(), person)
        .update();
  }

  /**
   * Holds all changes of administrators back until the transaction ends.
   *
   * @throws Refusal 409 if nobody but this person could look after people
   */
  void requireAnotherAdministrator(UUID person) {
    List<UUID> administrators =
        jdbc.sql(
                "select person from account where active and 'administrator' = any(roles) order by person for update")
            .query(UUID.class)
            .list();
    if (administrators.equals(List.of(person))) {
      throw new Refusal(
          409,
          "last-administrator",
          "This is the only administrator: make another one first, or nobody could look after people.");
    }
  }

  boolean hasAdministrator() {
    return jdbc.sql(
            "select exists(select 1 from account where active and 'administrator' = any(roles))")
        .query(Boolean.class)
        .single();
  }

  private static String[] words(Set<Caller> roles) {
    return Roles.words(roles).toArray(String[]::new);
  }

  private OffsetDateTime now() {
    Instant now = clock.instant();
    return now.atOffset(ZoneOffset.UTC);
  }
}
