package evenpair.web;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.EvenpairDatabaseTest;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Size;
import java.io.ByteArrayInputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RequestPart;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.multipart.MultipartFile;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Through a real socket, on controllers of its own that do every wrong thing. */
@EvenpairDatabaseTest(properties = "evenpair.capture-max-bytes=2048")
@Import(ProblemsTests.Clumsy.class)
class ProblemsTests {
  @LocalServerPort int port;

  private final HttpClient client = HttpClient.newHttpClient();
  private final JsonMapper json = JsonMapper.builder().build();

  record Seating(int seating, double levelDb, Instant measuredAt, @Size(max = 3) String station) {}

  @RestController
  @AllowedFor(Caller.ANYONE)
  static class Clumsy {
    @PostMapping("/test/json")
    Seating echo(@RequestBody @Valid Seating seating) {
      return seating;
    }

    @PostMapping("/test/upload")
    long upload(
        @RequestPart("inspection") Seating seating, @RequestPart("left") MultipartFile left) {
      return left.getSize();
    }

    @GetMapping("/test/refused")
    void refused() {
      throw new Refusal(409, "already-judged", "This unit has a verdict.")
          .with("field", "serial")
          .with("choices", new int[] {1});
    }

    @GetMapping("/test/broken")
    void broken() {
      throw new IllegalStateException("secret detail: password=sedge");
    }

    @GetMapping(path = "/test/only-json", produces = MediaType.APPLICATION_JSON_VALUE)
    Seating onlyJson() {
      return new Seating(1, 94, Instant.EPOCH, "b");
    }

    @GetMapping("/test/by-id/{id}")
    UUID byId(@PathVariable UUID id, @RequestParam int limit) {
      return id;
    }

    @GetMapping("/test/not-a-number")
    double notANumber() {
      return Double.NaN;
    }

    @GetMapping("/test/absent-points")
    double[] absentPoints() {
      return new double[] {1.5, Double.NaN, -2};
    }
  }

  private HttpRequest.Builder to(String path) {
    return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path));
  }

  private HttpResponse<String> send(HttpRequest.Builder request) throws Exception {
    return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
  }

  /**
   * Sends, checks that the answer is a problem document of that status and type, and gives it back.
   */
  private JsonNode problem(HttpRequest.Builder request, int status, String type) throws Exception {
    HttpResponse<String> answer = send(request);
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(status);
    assertThat(answer.headers().firstValue("Content-Type")).hasValue("application/problem+json");
    JsonNode problem = json.readTree(answer.body());
    assertThat(problem.path("type").asString()).isEqualTo("/problems/" + type);
    assertThat(problem.path("status").asInt()).isEqualTo(status);
    assertThat(problem.path("title").asString()).isNotBlank();
    assertThat(problem.path("detail").asString()).isNotBlank();
    return problem;
  }

  private HttpRequest.Builder posting(String body) {
    return to("/test/json")
        .header("Content-Type", "application/json")
        .POST(HttpRequest.BodyPublishers.ofString(body));
  }

  private HttpRequest.Builder uploading(String inspection, int leftBytes) {
    String body =
        "--cut\r\nContent-Disposition: form-data; name=\"inspection\"\r\nContent-Type: application/json\r\n\r\n"
            + inspection
            + "\r\n--cut\r\nContent-Disposition: form-data; name=\"left\"; filename=\"l.wav\"\r\nContent-Type: audio/wav\r\n\r\n"
            + "x".repeat(leftBytes)
            + "\r\n--cut--\r\n";
    return to("/test/upload")
        .header("Content-Type", "multipart/form-data; boundary=cut")
        .POST(HttpRequest.BodyPublishers.ofString(body));
  }

  @Nested
  class ARefusal {
    @Test
    void carriesItsMembers() throws Exception {
      JsonNode problem = problem(to("/test/refused"), 409, "already-judged");
      assertThat(problem.path("detail").asString()).isEqualTo("This unit has a verdict.");
      assertThat(problem.path("field").asString()).isEqualTo("serial");
      assertThat(problem.path("choices").get(0).asInt()).isEqualTo(1);
    }

    @Test
    void reachesAClientThatAskedForAnotherForm() throws Exception {
      problem(to("/test/refused").header("Accept", "application/pdf"), 409, "already-judged");
    }
  }

  @Nested
  class JsonThatIsNotRight {
    private static final String RIGHT =
        "{\"seating\":1,\"levelDb\":94.0,\"measuredAt\":\"2026-11-25T07:00:00Z\",\"station\":\"b1\"}";

    @Test
    void passesWhenItIsRight() throws Exception {
      assertThat(send(posting(RIGHT)).body()).isEqualTo(RIGHT);
    }

    @Test
    void namesAnUnknownFieldAndTheKnownOnes() throws Exception {
      JsonNode problem =
          problem(posting(RIGHT.replace("{", "{\"seatnig\":1,")), 400, "unknown-field");
      assertThat(problem.path("field").asString()).isEqualTo("seatnig");
      assertThat(problem.path("choices").toString()).contains("seating", "levelDb");
      assertThat(problem.path("place").asString()).startsWith("line 1, column ");
    }

    @Test
    void namesAFieldOfTheWrongKind() throws Exception {
      JsonNode problem = problem(posting(RIGHT.replace("94.0", "\"loud\"")), 400, "invalid-field");
      assertThat(problem.path("field").asString()).isEqualTo("levelDb");
      assertThat(problem.path("expected").asString()).isEqualTo("a finite number");
    }

    @Test
    void takesTheWordNanForNoNumber() throws Exception {
      assertThat(
              problem(posting(RIGHT.replace("94.0", "\"NaN\"")), 400, "invalid-field")
                  .path("field")
                  .asString())
          .isEqualTo("levelDb");
    }

    @Test
    void takesNoNumberBeyondADouble() throws Exception {
      assertThat(
              problem(posting(RIGHT.replace("94.0", "1e400")), 400, "invalid-field")
                  .path("field")
                  .asString())
          .isEqualTo("levelDb");
    }

    @Test
    void cutsNoFractionFromAWholeNumber() throws Exception {
      JsonNode problem =
          problem(posting(RIGHT.replace("\"seating\":1", "\"seating\":1.7")), 400, "invalid-field");
      assertThat(problem.path("field").asString()).isEqualTo("seating");
    }

    @Test
    void takesNoNumberThatIsAText() throws Exception {
      problem(posting(RIGHT.replace("\"seating\":1", "\"seating\":\"1\"")), 400, "invalid-field");
    }

    @Test
    void needsEveryNumber() throws Exception {
      problem(
          posting(
              "{\"seating\":null,\"levelDb\":1,\"measuredAt\":\"2026-11-25T07:00:00Z\",\"station\":\"b\"}"),
          400,
          "invalid-field");
      problem(
          posting("{\"seating\":1,\"measuredAt\":\"2026-11-25T07:00:00Z\",\"station\":\"b\"}"),
          400,
          "invalid-field");
    }

    @Test
    void refusesAFieldThatStandsTwice() throws Exception {
      problem(posting(RIGHT.replace("{", "{\"seating\":2,")), 400, "unreadable-json");
    }

    @Test
    void saysWhatATimeLooksLike() throws Exception {
      JsonNode problem =
          problem(
              posting(RIGHT.replace("2026-11-25T07:00:00Z", "yesterday")), 400, "invalid-field");
      assertThat(problem.path("expected").asString()).contains("2026-11-25T07:00:00Z");
    }

    @Test
    void saysWhereItStopsBeingJson() throws Exception {
      JsonNode problem = problem(posting("{\n  \"seating\": one}"), 400, "unreadable-json");
      assertThat(problem.path("place").asString()).startsWith("line 2, column ");
      assertThat(problem.path("detail").asString()).doesNotContain("tools.jackson", "Source");
    }

    @Test
    void isRefusedWhenItIsNestedLikeABomb() throws Exception {
      problem(
          posting(RIGHT.replace("{", "{\"deep\":" + "[".repeat(5000) + "]".repeat(5000) + ",")),
          400,
          "unreadable-json");
    }

    @Test
    void isRefusedWhenItIsTooLong() throws Exception {
      problem(posting(RIGHT + " ".repeat((int) BodyLimitFilter.MOST)), 413, "body-too-large");
    }

    @Test
    void isRefusedWhenItIsTooLongAndItsLengthWasNotStated() throws Exception {
      byte[] body =
          (RIGHT + " ".repeat((int) BodyLimitFilter.MOST)).getBytes(StandardCharsets.US_ASCII);
      problem(
          to("/test/json")
              .header("Content-Type", "application/json")
              .POST(HttpRequest.BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(body))),
          413,
          "body-too-large");
    }

    @Test
    void isRefusedWhenItIsEmpty() throws Exception {
      problem(posting(""), 400, "unreadable-json");
    }

    @Test
    void namesAFieldThatBreaksItsRule() throws Exception {
      JsonNode problem =
          problem(posting(RIGHT.replace("\"b1\"", "\"bench\"")), 400, "invalid-field");
      assertThat(problem.path("field").asString()).isEqualTo("station");
    }
  }

  @Nested
  class AnUpload {
    private static final String SEATING =
        "{\"seating\":1,\"levelDb\":1,\"measuredAt\":\"2026-11-25T07:00:00Z\",\"station\":\"b\"}";

    @Test
    void passesUpToTheLimit() throws Exception {
      assertThat(send(uploading(SEATING, 2048)).body()).isEqualTo("2048");
    }

    @Test
    void isRefusedAboveItNamingLimitAndSetting() throws Exception {
      JsonNode problem = problem(uploading(SEATING, 2049), 413, "upload-too-large");
      assertThat(problem.path("detail").asString()).contains("2048", "evenpair.capture-max-bytes");
    }

    @Test
    void isRefusedByItsStatedLengthBeforeItIsRead() throws Exception {
      // Of a body of ten gigabytes nothing is sent: an answer can only come from the header.
      String head =
          "POST /test/upload HTTP/1.1\r\nHost: 127.0.0.1:"
              + port
              + "\r\nContent-Type: multipart/form-data; boundary=cut\r\n"
              + "Content-Length: 10000000000\r\nConnection: close\r\n\r\n";
      try (Socket socket = new Socket("127.0.0.1", port)) {
        socket.setSoTimeout(30_000); // only so that a wrong answer fails instead of hanging
        socket.getOutputStream().write(head.getBytes(StandardCharsets.US_ASCII));
        socket.getOutputStream().flush();
        byte[] start = socket.getInputStream().readNBytes("HTTP/1.1 413".length());
        assertThat(new String(start, StandardCharsets.US_ASCII)).isEqualTo("HTTP/1.1 413");
      }
    }

    @Test
    void namesAMissingPart() throws Exception {
      String body =
          "--cut\r\nContent-Disposition: form-data; name=\"inspection\"\r\nContent-Type: application/json\r\n\r\n"
              + SEATING
              + "\r\n--cut--\r\n";
      JsonNode problem =
          problem(
              to("/test/upload")
                  .header("Content-Type", "multipart/form-data; boundary=cut")
                  .POST(HttpRequest.BodyPublishers.ofString(body)),
              400,
              "missing-part");
      assertThat(problem.path("part").asString()).isEqualTo("left");
    }

    @Test
    void namesAnUnknownFieldOfAJsonPart() throws Exception {
      assertThat(
              problem(uploading(SEATING.replace("{", "{\"nonsense\":1,"), 1), 400, "unknown-field")
                  .path("field")
                  .asString())
          .isEqualTo("nonsense");
    }

    @Test
    void isRefusedInAnotherContentType() throws Exception {
      JsonNode problem =
          problem(
              to("/test/json")
                  .header("Content-Type", "text/csv")
                  .POST(HttpRequest.BodyPublishers.ofString("1,2")),
              415,
              "unsupported-content-type");
      assertThat(problem.path("choices").toString()).contains("application/json");
    }

    @Test
    void thatBreaksOffMidwayDoesNoHarm() throws Exception {
      try (Socket socket = new Socket("127.0.0.1", port)) {
        OutputStream out = socket.getOutputStream();
        out.write(
            ("POST /test/upload HTTP/1.1\r\nHost: 127.0.0.1:"
                    + port
                    + "\r\nContent-Type: multipart/form-data; boundary=cut\r\n"
                    + "Content-Length: 900\r\n\r\n--cut\r\nContent-Disposition: form-data; name=\"left\"; filename=\"l.wav\"\r\n\r\nxx")
                .getBytes(StandardCharsets.US_ASCII));
        out.flush();
      }
      assertThat(send(uploading(SEATING, 10)).statusCode()).isEqualTo(200);
    }
  }

  @Nested
  class OtherMistakes {
    @Test
    void anUnexpectedFailureShowsAnIncidentAndNothingElse() throws Exception {
      JsonNode problem = problem(to("/test/broken"), 500, "internal-error");
      assertThat(UUID.fromString(problem.path("incident").asString()).version()).isEqualTo(7);
      assertThat(problem.toString()).doesNotContain("secret", "Exception", "sedge");
    }

    @Test
    void aNumberThatIsNoneNeverLeaves() throws Exception {
      problem(to("/test/not-a-number"), 500, "internal-error");
    }

    @Test
    void anAbsentPointOfACurveIsNull() throws Exception {
      assertThat(send(to("/test/absent-points")).body()).isEqualTo("[1.5,null,-2.0]");
    }

    @Test
    void anIdThatIsNoneIsNamed() throws Exception {
      JsonNode problem = problem(to("/test/by-id/seven?limit=1"), 400, "invalid-parameter");
      assertThat(problem.path("field").asString()).isEqualTo("id");
      assertThat(problem.path("expected").asString()).isEqualTo("a UUID");
    }

    @Test
    void aMissingParameterIsNamed() throws Exception {
      JsonNode problem = problem(to("/test/by-id/" + UUID.randomUUID()), 400, "missing-parameter");
      assertThat(problem.path("field").asString()).isEqualTo("limit");
    }

    @Test
    void aWrongMethodIsToldTheRightOnes() throws Exception {
      HttpResponse<String> answer = send(to("/test/json"));
      assertThat(answer.statusCode()).isEqualTo(405);
      assertThat(answer.headers().firstValue("Allow")).hasValue("POST");
      problem(to("/test/json"), 405, "method-not-allowed");
    }

    @Test
    void aFormThatCannotBeHadIsTold() throws Exception {
      problem(to("/test/only-json").header("Accept", "application/pdf"), 406, "not-acceptable");
    }

    @Test
    void anAddressThatTheFirewallRefusesIsAProblemToo() throws Exception {
      problem(to("/api//units/a"), 400, "bad-request");
    }

    @Test
    void anAddressThatTheContainerRefusesIsAProblemToo() throws Exception {
      problem(to("/api/units/a%00b"), 400, "bad-request");
    }
  }
}
