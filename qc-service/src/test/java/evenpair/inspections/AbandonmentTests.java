package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.inspections.TestLine.Reply;
import java.util.UUID;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;

/** The time-out of open inspections, and what the description of the API says. */
@InspectionTest
class AbandonmentTests {
  private static final String STATION = "bench-a";

  @LocalServerPort private int port;
  @Autowired private JdbcClient jdbc;
  @Autowired private Abandonment abandonment;
  private TestLine line;

  @BeforeAll
  void station() {
    line = new TestLine(port);
    line.makeUncalibratedStation(STATION);
  }

  private UUID open(String serial) {
    byte[] left = TestSound.wav(TestSound.capture(serial.hashCode(), TestSound.peak(3000, 6)));
    byte[] right =
        TestSound.wav(TestSound.capture(serial.hashCode() + 1L, TestSound.peak(3000, 6)));
    Reply reply = line.inspect(TestLine.inspection(serial, "plain", STATION), left, right);
    assertThat(reply.text("state")).isEqualTo("open");
    return UUID.fromString(reply.text("id"));
  }

  private void age(UUID id, int hours) {
    jdbc.sql(
            "update inspection set last_attempt_at = last_attempt_at - make_interval(hours => ?) where id = ?")
        .params(hours, id)
        .update();
  }

  @Test
  void abandonsAfterTheSetTimeAndSealsWhy() {
    UUID old = open("FE-OLD");
    UUID young = open("FE-YOUNG");
    age(old, 25);
    age(young, 23);

    abandonment.timeOut();

    Reply reply = line.get("/api/inspections/" + old);
    assertThat(reply.text("state")).isEqualTo("abandoned");
    assertThat(reply.text("abandonedBecause")).isEqualTo("timed-out");
    assertThat(reply.text("verdict")).isNull();
    assertThat(line.get("/api/inspections/" + young).text("state")).isEqualTo("open");
    assertThat(
            jdbc.sql(
                    "select count(*) from ledger_entry where kind = 'inspection-abandoned' and subject = ?")
                .param(old)
                .query(Integer.class)
                .single())
        .isEqualTo(1);
  }

  @Test
  void describesTheUploadWithItsPartsAndAnExample() {
    var docs = line.get("/v3/api-docs").json();
    var post = docs.path("paths").path("/api/inspections").path("post");
    assertThat(post.path("requestBody").path("content").has("multipart/form-data")).isTrue();
    assertThat(
            docs.path("components")
                .path("schemas")
                .path("InspectionUpload")
                .path("properties")
                .propertyNames())
        .contains("inspection", "left", "right", "both", "idleLeft", "idleRight");
    assertThat(post.path("responses").propertyNames()).contains("201", "200", "409", "422", "507");
    assertThat(post.path("responses").path("201").toString()).contains("treble window");
    assertThat(post.path("parameters").toString()).contains("Idempotency-Key");
  }
}
