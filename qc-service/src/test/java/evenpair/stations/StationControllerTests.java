package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThat;

import com.jayway.jsonpath.JsonPath;
import java.net.http.HttpResponse;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StationControllerTests extends StationHttpTest {
  @Test
  void twiceChangesTheNote() throws Exception {
    HttpResponse<String> again = Multipart.send("PUT", url(""), "{\"note\":\"moved\"}");
    assertThat(again.statusCode()).isEqualTo(200);
    assertThat(JsonPath.<String>read(again.body(), "$.note")).isEqualTo("moved");
    assertThat(stations.names()).contains(name);
  }

  @Test
  void twiceWithoutANoteKeepsIt() throws Exception {
    String again = Multipart.send("PUT", url(""), "{}").body();
    assertThat(JsonPath.<String>read(again, "$.note")).isEqualTo("for a test");
  }

  @ParameterizedTest
  @CsvSource({"Bench-1", "bench%201", "b%C3%A4nk", "bench.1", "a23456789012345678901234567890123"})
  void refusesABadName(String bad) throws Exception {
    HttpResponse<String> answer = Multipart.send("PUT", allStations() + "/" + bad, "{}");
    assertProblem(answer, 400, "invalid-field");
  }

  @Test
  void refusesAnUnknownField() throws Exception {
    assertProblem(Multipart.send("PUT", url(""), "{\"colour\":\"red\"}"), 400, "unknown-field");
  }

  @Test
  void namesTheKnownOnesWhenAskedForAnother() throws Exception {
    HttpResponse<String> answer = Multipart.send("GET", allStations() + "/nowhere", null);
    assertProblem(answer, 404, "unknown-station");
    assertThat(JsonPath.<List<String>>read(answer.body(), "$.choices")).contains(name);
  }

  @Test
  void startsWithEverythingMissing() throws Exception {
    String json = Multipart.send("GET", url(""), null).body();
    assertThat(JsonPath.<String>read(json, "$.state")).isEqualTo("needs-calibration");
    assertThat(JsonPath.<List<String>>read(json, "$.needs[*].why"))
        .containsExactly("missing", "missing", "missing", "missing");
    assertThat(JsonPath.<Object>read(json, "$.microphones.left")).isNull();
  }
}
