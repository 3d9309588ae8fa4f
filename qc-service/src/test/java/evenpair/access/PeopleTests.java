package evenpair.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.delete;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;

import com.jayway.jsonpath.JsonPath;
import evenpair.web.Caller;
import jakarta.servlet.http.Cookie;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.EnumSet;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;

class PeopleTests extends AccessTest {
  @Autowired private TransactionTemplate transaction;
  @Autowired private People people;
  private Cookie[] administrator;

  @BeforeEach
  void signIn() throws Exception {
    String name = unique("admin");
    person(name, Caller.ADMINISTRATOR);
    administrator = session(name);
  }

  private MockHttpServletResponse add(String name, String roles, String badge) throws Exception {
    String body =
        "{\"name\":\"%s\",\"roles\":[%s],\"badge\":%s}"
            .formatted(name, roles, badge == null ? "null" : "\"" + badge + "\"");
    return answer(own(json(post("/api/people"), body), administrator));
  }

  @Nested
  class Somebody {
    @Test
    void whoIsAddedSignsInWithThePasswordThatIsShownOnce() throws Exception {
      String name = unique("marsh");
      MockHttpServletResponse added = add(name, "\"operator\"", null);
      String password = JsonPath.read(added.getContentAsString(), "$.password");

      assertThat(added.getStatus()).isEqualTo(201);
      assertThat(signIn(name, password).getStatus()).isEqualTo(200);
      assertThat(answer(get("/api/people?limit=500").cookie(administrator)).getContentAsString())
          .contains(name)
          .doesNotContain(password);
    }

    @Test
    void whomARigHasNamedKeepsTheReferenceWhenGivenAnAccount() throws Exception {
      String name = unique("op");
      UUID named = transaction.execute(status -> people.refer(name));

      assertThat(
              JsonPath.<String>read(
                  add(name, "\"operator\"", null).getContentAsString(), "$.person.person"))
          .isEqualTo(named.toString());
      assertThat(add(name, "\"operator\"", null).getStatus()).isEqualTo(409);
    }

    @Test
    void hasABadgeThatNobodyElseHas() throws Exception {
      String badge = unique("900");
      assertThat(add(unique("op"), "\"operator\"", badge).getStatus()).isEqualTo(201);
      assertThat(add(unique("op"), "\"operator\"", badge).getContentAsString())
          .contains("/problems/badge-taken");
    }

    @Test
    void cannotHaveARoleThatThereIsNot() throws Exception {
      assertThat(add(unique("op"), "\"king\"", null).getContentAsString())
          .contains("/problems/invalid-field", "administrator");
      assertThat(add(unique("op"), "null", null).getStatus()).isEqualTo(400);
    }

    @Test
    void whosePasswordIsResetIsSignedOutEverywhere() throws Exception {
      String name = unique("marsh");
      UUID person = person(name, Caller.OPERATOR);
      Cookie[] session = session(name);

      MockHttpServletResponse reset =
          answer(own(post("/api/people/" + person + "/password"), administrator));

      assertThat(whoIs(session)).contains("\"person\":null");
      assertThat(signIn(name, PASSWORD).getStatus()).isEqualTo(401);
      assertThat(signIn(name, JsonPath.read(reset.getContentAsString(), "$.password")).getStatus())
          .isEqualTo(200);
    }

    @Test
    void whoIsDeactivatedIsSignedOutEverywhere() throws Exception {
      String name = unique("marsh");
      UUID person = person(name, Caller.OPERATOR);
      Cookie[] session = session(name);

      MockHttpServletResponse changed =
          answer(
              own(
                  json(
                      put("/api/people/" + person),
                      "{\"roles\":[\"operator\"],\"badge\":null,\"active\":false}"),
                  administrator));

      assertThat(changed.getStatus()).as(changed.getContentAsString()).isEqualTo(200);
      assertThat(whoIs(session)).contains("\"person\":null");
      assertThat(
              jdbc.sql("select count(*) from spring_session where principal_name = ?")
                  .param(person.toString())
                  .query(Integer.class)
                  .single())
          .isZero();
    }
  }

  @Nested
  class Erasing {
    @Test
    void takesNameBadgePasswordAndSessionsAndLeavesTheReference() throws Exception {
      String name = unique("gone");
      String badge = unique("901");
      UUID person = person(name, Caller.OPERATOR);
      accounts.setBadge(person, badge);
      Cookie[] session = session(name);

      assertThat(answer(own(delete("/api/people/" + person), administrator)).getStatus())
          .isEqualTo(204);

      assertThat(whoIs(session)).contains("\"person\":null");
      assertThat(people.nameOf(person)).isEmpty();
      assertThat(
              jdbc.sql(
                      "select concat(person::text, account::text) from person join account on account.person = person.ref where ref = ?")
                  .param(person)
                  .query(String.class)
                  .single())
          .contains(person.toString())
          .doesNotContain(name, badge, "bcrypt");
      assertThat(answer(get("/api/people/" + person).cookie(administrator)).getStatus())
          .isEqualTo(404);
    }

    @Test
    void isRefusedWhileADutyBindsTheName() throws Exception {
      String name = unique("bound");
      UUID person = person(name, Caller.ENGINEER);
      jdbc.sql("update person set erasable = false where ref = ?").param(person).update();

      assertThat(answer(own(delete("/api/people/" + person), administrator)).getContentAsString())
          .contains("/problems/not-erasable");
      assertThat(people.nameOf(person)).hasValue(name);
    }
  }

  /** Other tests share the database and its administrators: theirs are put aside and come back. */
  @Nested
  @Transactional
  class TheLastAdministrator {
    private UUID only() {
      jdbc.sql("update account set active = false where 'administrator' = any(roles)").update();
      return accounts.open(unique("last"), PASSWORD, EnumSet.of(Caller.ADMINISTRATOR));
    }

    @Autowired private PeopleDesk desk;

    @Test
    void canBeNeitherErasedNorDeactivatedNorMadeSomethingElse() {
      UUID last = only();

      for (Runnable end :
          new Runnable[] {
            () -> desk.erase(last),
            () -> desk.change(last, EnumSet.of(Caller.ADMINISTRATOR), null, false),
            () -> desk.change(last, EnumSet.of(Caller.ENGINEER), null, true)
          }) {
        assertThat(org.assertj.core.api.Assertions.catchThrowable(end::run))
            .hasMessageContaining("only administrator");
      }
      accounts.open(unique("second"), PASSWORD, EnumSet.of(Caller.ADMINISTRATOR));
      assertThat(desk.change(last, EnumSet.of(Caller.ENGINEER), null, true).roles())
          .containsExactly(Caller.ENGINEER);
    }

    @Test
    void isMadeAtTheFirstStartWithAPasswordPrintedOnce() {
      jdbc.sql("update account set active = false where 'administrator' = any(roles)").update();
      ByteArrayOutputStream printed = new ByteArrayOutputStream();
      FirstAdministrator first =
          new FirstAdministrator(
              jdbc, transaction, accounts, new PrintStream(printed, true, StandardCharsets.UTF_8));

      first.run(null);
      first.run(null);

      String console = printed.toString(StandardCharsets.UTF_8);
      String password = console.split("password +")[1].lines().findFirst().orElseThrow().strip();
      AccountStore.Person made = accounts.findByName(FirstAdministrator.NAME).orElseThrow();
      assertThat(new Passwords().matches(password, made.hash())).isTrue();
      assertThat(console.split("The first administrator")).hasSize(2);
      assertThat(made.hash()).doesNotContain(password);
    }
  }
}
