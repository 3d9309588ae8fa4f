package evenpair.products;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import evenpair.EvenpairDatabaseTest;
import evenpair.access.TestCallers;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

/** What the tests of the products' HTTP calls share; one context and one database for all. */
@EvenpairDatabaseTest
abstract class ProductsOverHttp {
  @Autowired MockMvc mvc;
  @Autowired LimitsLoader loader;

  static String sets(String product) {
    return "/api/products/" + product + "/tunings/plain/limit-sets";
  }

  static String goldens(String product) {
    return "/api/products/" + product + "/tunings/plain/golden-responses";
  }

  static String yaml(String product, int version) {
    return Examples.judgeable("plain", version).replace("product: sedge-2", "product: " + product);
  }

  void given(String product) {
    loader.load(List.of(LimitsLoaderTests.folder(product, 100, 1)));
  }

  ResultActions draft(String product, String body) throws Exception {
    return mvc.perform(
        post(sets(product)).param("author", "qe-1").contentType("application/yaml").content(body));
  }

  ResultActions approve(String path, String approver) throws Exception {
    return mvc.perform(
        post(path + "/approval")
            .header(TestCallers.PERSON, approver)
            .contentType(MediaType.APPLICATION_JSON)
            .content(
                "{\"approver\":\""
                    + approver
                    + "\",\"reason\":\"the last five batches sit well inside\"}"));
  }

  ResultActions activate(String path, String body) throws Exception {
    return mvc.perform(
        post(path + "/activation").contentType(MediaType.APPLICATION_JSON).content(body));
  }

  /** Drafts a further version of plain's golden response. */
  void draftGolden(String product, DoubleUnaryOperator dbAtHz) throws Exception {
    mvc.perform(
            post(goldens(product))
                .param("author", "qe-1")
                .param("name", "plain-golden.csv")
                .contentType("text/csv")
                .content(Examples.golden(dbAtHz)))
        .andExpect(status().isCreated())
        .andExpect(jsonPath("$.active").value(false));
  }
}
