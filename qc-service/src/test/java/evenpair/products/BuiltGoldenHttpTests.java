package evenpair.products;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import evenpair.access.People;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.products.Products.Provenance;
import evenpair.tolerance.GoldenResponse;
import evenpair.web.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.support.TransactionTemplate;

/** Each test works on a product of its own, since the database is shared. */
class BuiltGoldenHttpTests extends ProductsOverHttp {
  @Autowired StoredProducts products;
  @Autowired People people;
  @Autowired TransactionTemplate transaction;

  @Test
  void keepsWhatItWasBuiltFromAndNeedsAnotherEngineer() throws Exception {
    given("teal-26");
    UUID taken = UUID.randomUUID();
    UUID left = UUID.randomUUID();
    double[] spread = new double[Grid.POINTS];
    spread[3] = Double.NaN;
    spread[4] = 0.25;
    GoldenResponse response = new GoldenResponse(Curve.from(hz -> 101), Optional.empty());

    UUID author = transaction.execute(status -> people.refer("qe-1"));
    UUID id =
        products.draftGolden(
            "teal-26",
            "plain",
            "plain-golden.csv",
            response,
            author,
            new Provenance(31, Curve.of(spread), List.of(taken), List.of(left)));

    assertThat(products.snapshot().golden(id).provenance().spreadDb().at(4)).isEqualTo(0.25);
    mvc.perform(get(goldens("teal-26") + "/2"))
        .andExpect(jsonPath("$.state").value("draft"))
        .andExpect(jsonPath("$.author").value("qe-1"))
        .andExpect(jsonPath("$.built.units").value(31))
        .andExpect(jsonPath("$.built.inspections[0]").value(taken.toString()))
        .andExpect(jsonPath("$.built.leftOut[0]").value(left.toString()))
        .andExpect(jsonPath("$.built.spreadDb[3]").isEmpty())
        .andExpect(jsonPath("$.built.spreadDb[4]").value(0.25));
    approve(goldens("teal-26") + "/2", "qe-1").andExpect(status().isConflict());
  }

  @Test
  void isRefusedUnderANameThatIsNoFileName() {
    given("teal-27");
    GoldenResponse response = new GoldenResponse(Curve.from(hz -> 101), Optional.empty());
    Provenance provenance = new Provenance(3, Curve.from(hz -> 0.1));

    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(
            () ->
                products.draftGolden(
                    "teal-27", "plain", "../golden", response, UUID.randomUUID(), provenance));
  }
}
