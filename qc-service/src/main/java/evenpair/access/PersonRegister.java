package evenpair.access;

import evenpair.web.Refusal;
import java.text.Normalizer;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * People in the table {@code person}. Two who add the same name at once get the same reference: the
 * second waits for the first.
 */
@Component
class PersonRegister implements People {
  private static final int LONGEST = 64;

  private final JdbcClient jdbc;
  private final Clock clock;

  PersonRegister(JdbcClient jdbc, Clock clock) {
    this.jdbc = jdbc;
    this.clock = clock;
  }

  /**
   * @throws Refusal 400 if it is empty, too long, or holds a control character
   */
  @Override
  @Transactional(propagation = Propagation.MANDATORY)
  public UUID refer(String nameOrBadge) {
    String name = checked(nameOrBadge);
    return find(name).orElseGet(() -> add(name));
  }

  private UUID add(String name) {
    jdbc.sql(
            "insert into person (ref, name, added_at) values (?, ?, ?) on conflict (name) do nothing")
        .params(UUID.randomUUID(), name, clock.instant().atOffset(ZoneOffset.UTC))
        .update();
    return find(name)
        .orElseThrow(
            () -> new IllegalStateException("a person was erased in the moment of being added"));
  }

  /** A badge says more than a name: nobody types another's badge as his name by chance. */
  private Optional<UUID> find(String name) {
    return jdbc.sql(
            "select ref from person where badge = :name or name = :name order by (badge = :name) desc nulls last limit 1")
        .param("name", name)
        .query(UUID.class)
        .optional();
  }

  @Override
  @Transactional(readOnly = true)
  public Optional<String> nameOf(UUID person) {
    return jdbc.sql(
            "select coalesce(name, badge) from person where ref = ? and coalesce(name, badge) is not null")
        .param(person)
        .query(String.class)
        .optional();
  }

  private static String checked(String nameOrBadge) {
    String name =
        nameOrBadge == null ? "" : Normalizer.normalize(nameOrBadge.strip(), Normalizer.Form.NFC);
    int length = name.codePointCount(0, name.length());
    if (length < 1 || length > LONGEST || name.codePoints().anyMatch(Character::isISOControl)) {
      String expected = "1 to " + LONGEST + " characters, none of them a control character";
      throw new Refusal(400, "invalid-name", "A person's name or badge must be " + expected + ".")
          .with("expected", expected);
    }
    return name;
  }
}
