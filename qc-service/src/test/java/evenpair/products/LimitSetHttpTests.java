package evenpair.products;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.hasItem;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.http.MediaType;

/** Each test works on a product of its own, since the database is shared. */
class LimitSetHttpTests extends ProductsOverHttp {
  @Test
  void productsListTheirTuningsAndTheActiveSet() throws Exception {
    given("teal-1");

    mvc.perform(get("/api/products"))
        .andExpect(status().isOk())
        .andExpect(jsonPath("$.items[?(@.product=='teal-1')].maker").value("Saltmarsh Works"))
        .andExpect(jsonPath("$.items[?(@.product=='teal-1')].tunings[0].activeLimitSet").value(1))
        .andExpect(jsonPath("$.items[?(@.product=='teal-1')].tunings[1].required").value(true));
  }

  @Nested
  class ADraft {
    @Test
    void isSignedByAnotherEngineerAndJudgesThen() throws Exception {
      given("teal-2");

      draft("teal-2", yaml("teal-2", 2))
          .andExpect(status().isCreated())
          .andExpect(header().string("Location", endsWith("/limit-sets/2")))
          .andExpect(jsonPath("$.state").value("draft"))
          .andExpect(jsonPath("$.active").value(false))
          .andExpect(jsonPath("$.origin").value("person"))
          .andExpect(jsonPath("$.author").value("qe-1"))
          .andExpect(jsonPath("$.golden.version").value(1))
          .andExpect(jsonPath("$.limitSet.level.balance-db").value(1.0));
      approve(sets("teal-2") + "/2", "qe-1")
          .andExpect(status().isConflict())
          .andExpect(jsonPath("$.type").value("/problems/approver-is-author"));
      approve(sets("teal-2") + "/2", "qe-2")
          .andExpect(status().isOk())
          .andExpect(jsonPath("$.state").value("approved"))
          .andExpect(jsonPath("$.active").value(true))
          .andExpect(jsonPath("$.approver").value("qe-2"))
          .andExpect(jsonPath("$.inLimits").value(false));
      approve(sets("teal-2") + "/2", "qe-3")
          .andExpect(status().isConflict())
          .andExpect(jsonPath("$.type").value("/problems/already-approved"));
      mvc.perform(get(sets("teal-2")))
          .andExpect(jsonPath("$.items[0].version").value(2))
          .andExpect(jsonPath("$.items[1].version").value(1))
          .andExpect(jsonPath("$.items[1].active").value(false))
          .andExpect(jsonPath("$.items[1].inLimits").value(true))
          .andExpect(jsonPath("$.items[1].limitSet").doesNotExist());
    }

    @Test
    void isMarkedAsInLimitsOnceItsExportStandsThere() throws Exception {
      given("teal-3");
      draft("teal-3", yaml("teal-3", 2)).andExpect(status().isCreated());
      approve(sets("teal-3") + "/2", "qe-2").andExpect(status().isOk());

      String export =
          mvc.perform(get(sets("teal-3") + "/2").accept("application/yaml"))
              .andExpect(content().contentTypeCompatibleWith("application/yaml"))
              .andReturn()
              .getResponse()
              .getContentAsString();
      LimitsFolder files = LimitsLoaderTests.folder("teal-3", 100, 1);
      files.files().put("plain.yaml", Examples.bytes(export));
      files.files().remove("plain-1.yaml");
      loader.load(List.of(files));

      mvc.perform(get(sets("teal-3") + "/2").accept("*/*"))
          .andExpect(jsonPath("$.inLimits").value(true));
    }

    @Test
    void withProblemsIsRefusedWithAllOfThem() throws Exception {
      given("teal-4");

      draft(
              "teal-4",
              yaml("teal-4", 2)
                  .replace("match-db: 1.5", "macht-db: 1.5")
                  .replace("balance-db: 1.0", "balance-db: 0"))
          .andExpect(status().is(422))
          .andExpect(content().contentType(MediaType.APPLICATION_PROBLEM_JSON))
          .andExpect(jsonPath("$.problems.length()").value(2))
          .andExpect(jsonPath("$.problems[0].path").value("level.balance-db"))
          .andExpect(jsonPath("$.problems[1].line").value(11))
          .andExpect(jsonPath("$.problems[1].expected").value(containsString("nearest: match-db")));
      mvc.perform(get(sets("teal-4"))).andExpect(jsonPath("$.items.length()").value(1));
    }

    @Test
    void ofAnotherProductOrGoldenIsRefused() throws Exception {
      given("teal-5");

      draft("teal-5", yaml("reed-1", 2).replace("plain-golden.csv", "other.csv"))
          .andExpect(status().is(422))
          .andExpect(jsonPath("$.problems[*].path").value(hasItem("product")))
          .andExpect(jsonPath("$.problems[*].path").value(hasItem("golden")));
    }

    @Test
    void ofAVersionThatIsNotNewIsRefusedWithTheNextOne() throws Exception {
      given("teal-6");

      draft("teal-6", yaml("teal-6", 1))
          .andExpect(status().isConflict())
          .andExpect(jsonPath("$.expected").value("at least 2"));
    }

    @Test
    void ofAnUnknownProductOrTuningIs404WithTheChoices() throws Exception {
      given("teal-7");

      draft("no-such", yaml("no-such", 1))
          .andExpect(status().isNotFound())
          .andExpect(jsonPath("$.choices").value(hasItem("teal-7")));
      mvc.perform(get("/api/products/teal-7/tunings/loud/limit-sets"))
          .andExpect(status().isNotFound())
          .andExpect(jsonPath("$.choices[1]").value("warm"));
      mvc.perform(get(sets("teal-7") + "/9"))
          .andExpect(status().isNotFound())
          .andExpect(jsonPath("$.choices[0]").value(1));
    }

    @Test
    void thatIsTooLargeIsRefusedUnread() throws Exception {
      given("teal-8");

      draft("teal-8", "x".repeat(300_000)).andExpect(status().is(413));
    }

    @Test
    void mayBeJson() throws Exception {
      given("teal-9");
      String json =
          mvc.perform(get(sets("teal-9") + "/1")).andReturn().getResponse().getContentAsString();
      var tree =
          tools.jackson.databind.json.JsonMapper.builder().build().readTree(json).get("limitSet");

      mvc.perform(
              post(sets("teal-9"))
                  .param("author", "qe-1")
                  .contentType(MediaType.APPLICATION_JSON)
                  .content(tree.toString().replace("\"version\":1", "\"version\":2")))
          .andExpect(status().isCreated());
    }

    @Test
    void isSignedByWhoeverIsSignedIn() throws Exception {
      given("teal-10");

      mvc.perform(
              post(sets("teal-10"))
                  .param("author", "qe-2")
                  .contentType("application/yaml")
                  .content(yaml("teal-10", 2)))
          .andExpect(status().isForbidden())
          .andExpect(jsonPath("$.field").value("author"));
      mvc.perform(post(sets("teal-10")).contentType("application/yaml").content(yaml("teal-10", 2)))
          .andExpect(status().isCreated())
          .andExpect(jsonPath("$.author").value("qe-1"));
    }
  }

  @Nested
  class Activation {
    @Test
    void takesAnOlderVersionBackIntoUse() throws Exception {
      given("teal-11");
      draft("teal-11", yaml("teal-11", 2)).andExpect(status().isCreated());
      approve(sets("teal-11") + "/2", "qe-2").andExpect(jsonPath("$.active").value(true));

      activate(sets("teal-11") + "/1", "{}")
          .andExpect(status().isOk())
          .andExpect(jsonPath("$.active").value(true));

      mvc.perform(get(sets("teal-11") + "/2")).andExpect(jsonPath("$.active").value(false));
    }

    @Test
    void mayLieAheadAndNotBehind() throws Exception {
      given("teal-12");
      draft("teal-12", yaml("teal-12", 2)).andExpect(status().isCreated());
      activate(sets("teal-12") + "/2", "{}")
          .andExpect(status().isConflict())
          .andExpect(jsonPath("$.type").value("/problems/not-approved"));

      activate(sets("teal-12") + "/1", "{\"from\":\"2001-01-01T00:00:00Z\"}")
          .andExpect(status().is(422))
          .andExpect(jsonPath("$.field").value("from"));
      activate(sets("teal-12") + "/1", "{\"from\":\"2999-01-01T00:00:00Z\"}")
          .andExpect(status().isOk())
          .andExpect(jsonPath("$.activeFrom").value("2999-01-01T00:00:00Z"))
          .andExpect(jsonPath("$.active").value(true));
    }
  }
}
