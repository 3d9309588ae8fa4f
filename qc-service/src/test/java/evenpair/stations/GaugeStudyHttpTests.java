package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.jayway.jsonpath.JsonPath;
import evenpair.acoustics.Grid;
import java.net.http.HttpResponse;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class GaugeStudyHttpTests extends TrustedStationTest {
  private static final String PLAN =
      "{\"product\":\"sedge-2\",\"tuning\":\"plain\",\"parts\":[\"SG2-000001\",\"SG2-000002\"],"
          + "\"operators\":[\"op-17\",\"op-18\"],\"seatings\":2,\"operator\":\"eng-3\"}";

  /**
   * Curves are stored as 32-bit floats near 100 dB, 8e-6 dB; the numbers below are sums and roots
   * of a few of them.
   */
  private static final double FLOATS = 1e-4;

  /**
   * Left level = 100 + 4·part + operator + 0.2·seating (each from 0), right 100: flat, so that the
   * offset carries all of it. By hand for left, left − right and balance: no interaction, so pooled
   * with 4 + 1 = 5 degrees of freedom: EV² = 4·2·0.1²/5 = 0.016; operators: MS = 4·(0.5² + 0.5²) =
   * 2, AV² = (2 − 0.016)/4 = 0.496; parts: MS = 4·(2² + 2²) = 32, PV² = (32 − 0.016)/4 = 7.996.
   */
  @Test
  void becomesABudgetOnceItIsComplete() throws Exception {
    String id = plan();
    assertProblem(budget(), 409, "no-budget");
    for (int part = 0; part < 2; part++) {
      for (int operator = 0; operator < 2; operator++) {
        for (int seating = 0; seating < 2; seating++) {
          assertThat(stations.budgetAt(name, "sedge-2", "plain", Instant.now())).isEmpty();
          double level = 100 + 4 * part + operator + 0.2 * seating;
          HttpResponse<String> answer =
              collect(id, part, "op-1" + (7 + operator), seating + 1, level);
          assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
        }
      }
    }

    String study = Multipart.send("GET", url("/gauge-studies/" + id), null).body();
    assertThat(JsonPath.<String>read(study, "$.state")).isEqualTo("complete");
    assertThat(JsonPath.<List<Object>>read(study, "$.missing")).isEmpty();
    assertThat(numbers(study, "$.analysis.left.repeatDb"))
        .hasSize(Grid.POINTS)
        .allSatisfy(db -> assertThat(db).isCloseTo(Math.sqrt(0.016), within(FLOATS)));
    List<Double> partDb =
        numbers(study, "$.analysis.regions[?(@.quantity=='left-right')].result.partDb");
    assertThat(partDb)
        .hasSize(3)
        .allSatisfy(db -> assertThat(db).isCloseTo(Math.sqrt(7.996), within(FLOATS)));

    UncertaintyBudget found =
        stations.budgetAt(name, "sedge-2", "plain", Instant.now()).orElseThrow();
    assertThat(found.offset().repeat()).isCloseTo(Math.sqrt(0.016), within(FLOATS));
    assertThat(found.offset().reproducibility()).isCloseTo(Math.sqrt(0.496), within(FLOATS));
    assertThat(found.offset().calibrator()).isEqualTo(0.15); // half of the usual 0.3 dB, k = 2
    assertThat(found.match().reproducibility().at(100)).isCloseTo(Math.sqrt(0.496), within(FLOATS));
    // aligned deviations of flat curves do not spread
    assertThat(found.deviation().combined(1).at(100)).isCloseTo(0, within(FLOATS));
    // two seatings: √(0.016/2 + 0.496 + 0.15²)
    assertThat(found.forSeatings(2).offsetDb()).isCloseTo(Math.sqrt(0.5265), within(FLOATS));

    String table = budget().body();
    assertThat(number(table, "$.level.expandedDb"))
        .isCloseTo(2 * Math.sqrt(0.016 + 0.496 + 0.0225), within(FLOATS));
    assertThat(JsonPath.<List<String>>read(table, "$.regions[*].region"))
        .containsExactly("bass", "mid", "treble");
  }

  @Test
  void saysWhatIsStillMissing() throws Exception {
    String id = plan();
    String study = collect(id, 1, "op-18", 2, 100).body();

    assertThat(JsonPath.<String>read(study, "$.state")).isEqualTo("collecting");
    assertThat(JsonPath.<Integer>read(study, "$.measured")).isEqualTo(1);
    assertThat(JsonPath.<Integer>read(study, "$.wanted")).isEqualTo(8);
    assertThat(JsonPath.<String>read(study, "$.missing[0].part")).isEqualTo("SG2-000001");
    assertThat(JsonPath.<List<Object>>read(study, "$.missing")).hasSize(7);
  }

  @Test
  void neverReplacesAMeasurement() throws Exception {
    String id = plan();
    collect(id, 0, "op-17", 1, 100);

    assertProblem(collect(id, 0, "op-17", 1, 101), 409, "seating-taken");
  }

  @Test
  void takesAFileOnce() throws Exception {
    String id = plan();
    byte[] left = curve(hz -> 100);
    capture(id, 0, "op-17", 1, left, curve(hz -> 100));

    assertProblem(capture(id, 0, "op-17", 2, left, curve(hz -> 100)), 422, "same-capture-in-study");
  }

  @Test
  void refusesWhatIsNotPlanned() throws Exception {
    String id = plan();
    HttpResponse<String> stranger = collect(id, 0, "op-99", 1, 100);

    assertProblem(stranger, 422, "not-in-the-plan");
    assertThat(JsonPath.<String>read(stranger.body(), "$.field")).isEqualTo("operator");
    assertProblem(collect(id, 0, "op-17", 3, 100), 422, "not-in-the-plan");
  }

  @Test
  void refusesPlansThatTellNothing() throws Exception {
    assertProblem(send(PLAN.replace(",\"op-18\"", "")), 400, "invalid-field");
    assertProblem(send(PLAN.replace("op-18", "op-17")), 422, "gauge-plan");
    assertProblem(
        send(PLAN.replace("\"seatings\"", "\"stations\":[\"a\",\"b\"],\"seatings\"")),
        422,
        "gauge-plan");
    assertProblem(send(PLAN.replace("sedge-2", "sedge-9")), 404, "unknown-product");
  }

  private String plan() throws Exception {
    HttpResponse<String> answer = send(PLAN);
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
    return JsonPath.read(answer.body(), "$.id");
  }

  private HttpResponse<String> send(String plan) throws Exception {
    return Multipart.send("POST", url("/gauge-studies"), plan);
  }

  private HttpResponse<String> budget() throws Exception {
    return Multipart.send("GET", url("/budget?product=sedge-2&tuning=plain"), null);
  }

  private HttpResponse<String> collect(
      String study, int part, String operator, int seating, double leftDb) throws Exception {
    return capture(study, part, operator, seating, curve(hz -> leftDb), curve(hz -> 100));
  }

  private HttpResponse<String> capture(
      String study, int part, String operator, int seating, byte[] left, byte[] right)
      throws Exception {
    String json =
        "{\"part\":\"SG2-00000%d\",\"operator\":\"%s\",\"seating\":%d}"
            .formatted(part + 1, operator, seating);
    return new Multipart()
        .json("capture", json)
        .wav("left", left)
        .wav("right", right)
        .post(url("/gauge-studies/" + study + "/captures"));
  }
}
