package evenpair.products;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import org.junit.jupiter.api.Test;

/** Each test works on a product of its own, since the database is shared. */
class GoldenResponseHttpTests extends ProductsOverHttp {
  @Test
  void isDraftedSignedAndThenMayJudge() throws Exception {
    given("teal-13");
    String csv = Examples.golden(hz -> 102.25);

    mvc.perform(
            post(goldens("teal-13"))
                .param("author", "qe-1")
                .param("name", "autumn.csv")
                .contentType("text/csv")
                .content(csv))
        .andExpect(status().isCreated())
        .andExpect(jsonPath("$.version").value(2))
        .andExpect(jsonPath("$.levelDb[7]").value(102.25));
    draft("teal-13", yaml("teal-13", 2).replace("plain-golden.csv", "autumn.csv"))
        .andExpect(status().isCreated());
    approve(sets("teal-13") + "/2", "qe-2")
        .andExpect(status().isConflict())
        .andExpect(jsonPath("$.type").value("/problems/golden-response-not-approved"));
    approve(goldens("teal-13") + "/2", "qe-1").andExpect(status().isConflict());
    approve(goldens("teal-13") + "/2", "qe-2")
        .andExpect(status().isOk())
        .andExpect(jsonPath("$.limitSets[0]").value(2));
    approve(sets("teal-13") + "/2", "qe-2").andExpect(status().isOk());

    String export =
        mvc.perform(get(goldens("teal-13") + "/2").accept("text/csv"))
            .andReturn()
            .getResponse()
            .getContentAsString();
    assertThat(export).isEqualTo(csv);
    mvc.perform(get(goldens("teal-13")))
        .andExpect(jsonPath("$.items[0].version").value(2))
        .andExpect(jsonPath("$.items[0].levelDb").doesNotExist());
  }

  @Test
  void isMeantByItsNameOnceItIsActive() throws Exception {
    given("teal-16");
    draftGolden("teal-16", hz -> 103);
    approve(goldens("teal-16") + "/2", "qe-2").andExpect(jsonPath("$.active").value(true));
    draft("teal-16", yaml("teal-16", 2)).andExpect(jsonPath("$.golden.version").value(2));

    activate(goldens("teal-16") + "/1", "{}").andExpect(jsonPath("$.active").value(true));
    draftGolden("teal-16", hz -> 104);

    mvc.perform(get(goldens("teal-16") + "/2")).andExpect(jsonPath("$.active").value(false));
    draft("teal-16", yaml("teal-16", 3)).andExpect(jsonPath("$.golden.version").value(1));
    activate(goldens("teal-16") + "/3", "{}").andExpect(status().isConflict());
  }

  @Test
  void withABadLineIsRefusedWithItsPlace() throws Exception {
    given("teal-14");
    String csv = Examples.golden(hz -> 100).replace("\n1000,100\n", "\n1000,loud\n");

    mvc.perform(
            post(goldens("teal-14"))
                .param("author", "qe-1")
                .param("name", "a.csv")
                .contentType("text/csv")
                .content(csv))
        .andExpect(status().is(422))
        .andExpect(jsonPath("$.problems[0].line").value(138));
  }

  @Test
  void thatIsKnownAlreadyIsRefused() throws Exception {
    given("teal-15");
    String csv = Examples.golden(hz -> 100);

    mvc.perform(
            post(goldens("teal-15"))
                .param("author", "qe-1")
                .param("name", "plain-golden.csv")
                .contentType("text/csv")
                .content(csv))
        .andExpect(status().isConflict())
        .andExpect(jsonPath("$.version").value(1));
  }
}
