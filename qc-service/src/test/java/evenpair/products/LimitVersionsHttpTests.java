package evenpair.products;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.endsWith;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import evenpair.access.TestCallers;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Going back, comparing, and YAML out and in. Each test works on a product of its own. */
class LimitVersionsHttpTests extends ProductsOverHttp {
  private String export(String product, int version) throws Exception {
    return mvc.perform(get(sets(product) + "/" + version).accept("application/yaml"))
        .andExpect(status().isOk())
        .andReturn()
        .getResponse()
        .getContentAsString();
  }

  @Nested
  class GoingBack {
    @Test
    void draftsTheOlderLimitsAsANewVersion() throws Exception {
      given("moss-1");
      draft("moss-1", yaml("moss-1", 2).replace("balance-db: 1.0", "balance-db: 0.8"))
          .andExpect(status().isCreated());
      approve(sets("moss-1") + "/2", "qe-2").andExpect(status().isOk());

      mvc.perform(post(sets("moss-1") + "/1/roll-back").header(TestCallers.PERSON, "qe-3"))
          .andExpect(status().isCreated())
          .andExpect(header().string("Location", endsWith("/limit-sets/3")))
          .andExpect(jsonPath("$.state").value("draft"))
          .andExpect(jsonPath("$.author").value("qe-3"))
          .andExpect(jsonPath("$.limitSet.level.balance-db").value(1.0));

      assertThat(export("moss-1", 3))
          .isEqualTo(export("moss-1", 1).replace("version: 1", "version: 3"));
      approve(sets("moss-1") + "/3", "qe-3")
          .andExpect(status().isConflict())
          .andExpect(jsonPath("$.type").value("/problems/approver-is-author"));
      approve(sets("moss-1") + "/3", "qe-2").andExpect(jsonPath("$.active").value(true));
    }

    @Test
    void keepsTheOlderVersionsGoldenResponseAlthoughANewerOneIsActive() throws Exception {
      given("moss-2");
      draftGolden("moss-2", hz -> 101);
      approve(goldens("moss-2") + "/2", "qe-2").andExpect(status().isOk());
      draft("moss-2", yaml("moss-2", 2)).andExpect(jsonPath("$.golden.version").value(2));

      mvc.perform(post(sets("moss-2") + "/1/roll-back"))
          .andExpect(jsonPath("$.golden.version").value(1));
    }

    @Test
    void toAnUnknownVersionIs404() throws Exception {
      given("moss-3");
      mvc.perform(post(sets("moss-3") + "/7/roll-back")).andExpect(status().isNotFound());
    }
  }

  @Nested
  class Differences {
    @Test
    void ofTwoVersionsComeInWordsAndAsCurves() throws Exception {
      given("moss-4");
      draft("moss-4", yaml("moss-4", 2).replace("balance-db: 1.0", "balance-db: 0.8"))
          .andExpect(status().isCreated());

      mvc.perform(get(sets("moss-4") + "/2/difference").param("from", "1"))
          .andExpect(status().isOk())
          .andExpect(jsonPath("$.words.length()").value(1))
          .andExpect(jsonPath("$.words[0]").value("The balance limit lowered from 1 dB to 0.8 dB."))
          .andExpect(jsonPath("$.from.upperDb.length()").value(241));
      mvc.perform(get(sets("moss-4") + "/2/difference").param("from", "9"))
          .andExpect(status().isNotFound());
    }

    @Test
    void ofASetThatIsNotStored() throws Exception {
      given("moss-5");

      mvc.perform(
              post(sets("moss-5") + "/difference")
                  .param("from", "1")
                  .contentType("application/yaml")
                  .content(yaml("moss-5", 1).replace("balance-db: 1.0", "balance-db: 1.3")))
          .andExpect(status().isOk())
          .andExpect(jsonPath("$.words[0]").value("The balance limit raised from 1 dB to 1.3 dB."));
    }
  }

  @Nested
  class Yaml {
    @Test
    void comesOutByTheSameBytesThatItWouldGoInBy() throws Exception {
      given("moss-6");
      draft("moss-6", yaml("moss-6", 2)).andExpect(status().isCreated());
      String first = export("moss-6", 2);

      draft("moss-6", first.replace("version: 2", "version: 3")).andExpect(status().isCreated());

      assertThat(export("moss-6", 3).replace("version: 3", "version: 2")).isEqualTo(first);
    }
  }
}
