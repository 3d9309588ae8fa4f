package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.access.TestCallers;
import evenpair.inspections.TestLine.Reply;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What becomes of units after they were judged, over HTTP; lives here for the line's tools. */
@InspectionTest
class UnitStoryTests {
  private static final String STATION = "bench-story";
  private static final JsonMapper JSON = JsonMapper.builder().build();
  private static boolean made;

  @LocalServerPort private int port;
  @Autowired private JdbcClient jdbc;
  private TestLine line;

  /** Twelve units, one of which differs more in the treble than the others. */
  @BeforeEach
  void aBatch() {
    line = new TestLine(port);
    if (made) {
      return;
    }
    line.makeStation(STATION);
    for (int n = 0; n < 12; n++) {
      inspect("OP-STORY-" + n, 200 + 2 * n, n == 5 ? 2.0 : 0.1 * (n % 4));
    }
    made = true;
  }

  private void inspect(String serial, long seed, double bump) {
    String json =
        """
        {"serial": "%s", "batch": "OB-STORY", "product": "open-1", "tuning": "plain", "station": "%s", "operator": "op-story"}
        """
            .formatted(serial, STATION);
    Reply reply =
        line.inspect(
            json,
            TestSound.wav(
                TestSound.capture(seed, TestSound.peak(3000, 6), TestSound.peak(9000, bump))),
            TestSound.wav(TestSound.capture(seed + 1, TestSound.peak(3000, 6))));
    assertThat(reply.text("verdict")).as("%s", reply.json()).isEqualTo("PASS");
  }

  private Reply ship(String reference, String serials) {
    return line.post(
        "/api/dispatches",
        """
        {"reference": "%s", "shippedAt": "2026-11-26T15:00:00Z", "serials": [%s]}
        """
            .formatted(reference, serials));
  }

  private static String as(String roles, int port, String path) {
    HttpRequest request =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
            .header(TestCallers.ROLES, roles)
            .build();
    return new String(send(request).body(), StandardCharsets.UTF_8);
  }

  private static HttpResponse<byte[]> send(HttpRequest request) {
    try {
      return HttpClient.newHttpClient().send(request, BodyHandlers.ofByteArray());
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  @Nested
  class ADispatch {
    @Test
    void isRecordedOnceHoweverOftenItIsSent() {
      Reply first = ship("DN-STORY-1", "\"OP-STORY-1\", \"OP-STORY-2\"");
      Reply again = ship("DN-STORY-1", "\"OP-STORY-1\", \"OP-STORY-2\"");

      assertThat(first.status()).as("%s", first.json()).isEqualTo(201);
      assertThat(first.json().path("units").intValue()).isEqualTo(2);
      assertThat(again.status()).isEqualTo(200);
      assertThat(again.raw().headers().firstValue("Idempotent-Replay")).hasValue("true");
      assertThat(again.text("id")).isEqualTo(first.text("id"));
    }

    @Test
    void refusesAnotherListUnderTheSameReference() {
      ship("DN-STORY-2", "\"OP-STORY-1\"");

      Reply other = ship("DN-STORY-2", "\"OP-STORY-3\"");

      assertThat(other.status()).isEqualTo(409);
      assertThat(other.text("type")).isEqualTo("/problems/reference-taken");
    }

    @Test
    void namesEveryUnknownSerialAndRecordsNothing() {
      Reply reply = ship("DN-STORY-3", "\"OP-STORY-1\", \"OP-NOBODY-1\", \"OP-NOBODY-2\"");

      assertThat(reply.status()).isEqualTo(422);
      assertThat(reply.json().path("unknown").toString())
          .isEqualTo("[\"OP-NOBODY-1\",\"OP-NOBODY-2\"]");
      assertThat(
              jdbc.sql("select count(*) from dispatch where reference = 'DN-STORY-3'")
                  .query(Long.class)
                  .single())
          .isZero();
    }

    @Test
    void comesAsCsvToo() throws IOException {
      HttpResponse<byte[]> reply =
          send(
              HttpRequest.newBuilder(
                      URI.create(
                          "http://127.0.0.1:" + port + "/api/dispatches?reference=DN-STORY-4"))
                  .header("Content-Type", "text/csv")
                  .POST(BodyPublishers.ofString("serial\nOP-STORY-3\nOP-STORY-4\n"))
                  .build());

      JsonNode json = JSON.readTree(reply.body());
      assertThat(reply.statusCode()).as("%s", json).isEqualTo(201);
      assertThat(json.path("items").path(1).path("serial").stringValue()).isEqualTo("OP-STORY-4");
      assertThat(json.path("notPassed").size()).isZero();
      assertThat(line.get("/api/dispatches?serial=OP-STORY-4").json().path("items").size())
          .isEqualTo(1);
    }

    @Test
    void isSealedWithItsUnits() {
      String id = ship("DN-STORY-5", "\"OP-STORY-7\"").text("id");

      String entry =
          jdbc.sql(
                  "select convert_from(content, 'UTF8') from ledger_entry where kind = 'dispatch' and subject = ?::uuid")
              .param(id)
              .query(String.class)
              .single();
      assertThat(entry).contains("OP-STORY-7", "dispatch_unit");
      assertThat(
              org.assertj.core.api.Assertions.catchThrowable(
                  () -> jdbc.sql("update dispatch set units = 9").update()))
          .isNotNull();
    }
  }

  @Nested
  class AUnitAmongAll {
    @Test
    void standsApartAndNamesItsRegion() {
      JsonNode across = line.get("/api/units/OP-STORY-5/across?tuning=plain").json();

      assertThat(across.path("answer").stringValue()).startsWith("This unit: in treble");
      assertThat(across.path("units").intValue()).isGreaterThanOrEqualTo(12);
      assertThat(across.path("measures").size()).isEqualTo(12);
      assertThat(across.path("points").path(0).path("values").size()).isEqualTo(12);
    }

    @Test
    void oneOfManyIsNoOutlier() {
      assertThat(line.get("/api/units/OP-STORY-3/across").json().path("answer").stringValue())
          .startsWith("Not this unit alone");
    }

    @Test
    void listsUnitsLikeItWithTheirDeliveries() {
      ship("DN-STORY-6", "\"OP-STORY-8\"");

      String csv =
          new String(
              line.get("/api/units/OP-STORY-0/across.csv?by=difference&shipped=true").raw().body(),
              StandardCharsets.UTF_8);

      assertThat(csv).startsWith("serial,batch,measured_at,verdict,db,shipped,reference,");
      assertThat(csv.split("\r\n"))
          .anyMatch(l -> l.startsWith("OP-STORY-8,OB-STORY,") && l.contains(",yes,DN-STORY-6,"))
          .noneMatch(l -> l.startsWith("OP-STORY-9,"));
    }

    @Test
    void namesTheListsThereAre() {
      assertThat(line.get("/api/units/OP-STORY-0/across.csv?by=colour").status()).isEqualTo(400);
      assertThat(line.get("/api/units/OP-NOBODY/across").status()).isEqualTo(404);
      assertThat(line.get("/api/units/OP-STORY-0/across?tuning=bright").status()).isEqualTo(404);
    }
  }

  @Nested
  class AStory {
    @Test
    void tellsMountingVerdictCertificateAndDeliveryInOrder() {
      ship("DN-STORY-7", "\"OP-STORY-10\"");

      JsonNode story = line.get("/api/units/OP-STORY-10/story").json();

      List<String> kinds =
          story
              .path("events")
              .valueStream()
              .map(event -> event.path("kind").stringValue())
              .toList();
      assertThat(kinds).containsSubsequence("attempt", "verdict", "certificate", "dispatch");
      assertThat(story.path("verdict").stringValue()).isEqualTo("PASS");
      String attempt = story.path("events").path(0).toString();
      assertThat(attempt).contains(STATION, "ES-left", "Output calibrated", "correction version 1");
    }

    @Test
    void namesPeopleForEngineersOnly() {
      String path = "/api/units/OP-STORY-11/story";

      assertThat(as("engineer", port, path)).contains("\"op-story\"", "\"operator\"");
      assertThat(as("operator", port, path)).doesNotContain("op-story").contains("\"operator\"");
    }

    @Test
    void isOfKnownUnitsOnly() {
      assertThat(line.get("/api/units/OP-NOBODY/story").status()).isEqualTo(404);
    }
  }
}
