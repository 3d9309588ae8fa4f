package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenpair.inspections.TestLine.Reply;
import evenpair.web.Refusal;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

/** Live events over a real socket. */
@InspectionTest
class LiveEventTests {
  private static final String STATION = "bench-e";

  @LocalServerPort private int port;
  @Autowired private LiveEvents live;
  private TestLine line;

  @BeforeAll
  void station() {
    line = new TestLine(port);
    line.makeStation(STATION);
  }

  private BufferedReader listen(Socket socket) throws IOException {
    socket.setSoTimeout((int) Duration.ofSeconds(30).toMillis());
    socket
        .getOutputStream()
        .write(
            "GET /api/events HTTP/1.1\r\nHost: 127.0.0.1\r\nAccept: text/event-stream\r\n\r\n"
                .getBytes(StandardCharsets.US_ASCII));
    BufferedReader reader =
        new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
    readUntil(reader, ":listening");
    return reader;
  }

  private static List<String> readUntil(BufferedReader reader, String beginning)
      throws IOException {
    List<String> lines = new ArrayList<>();
    for (String next = reader.readLine(); next != null; next = reader.readLine()) {
      lines.add(next);
      if (next.startsWith(beginning)) {
        return lines;
      }
    }
    throw new AssertionError("the stream ended before " + beginning + ": " + lines);
  }

  private Reply inspect(String serial) {
    return line.inspect(
        TestLine.inspection(serial, "plain", STATION),
        TestSound.wav(TestSound.capture(serial.hashCode(), TestSound.peak(3000, 6))),
        TestSound.wav(TestSound.capture(serial.hashCode() + 1L, TestSound.peak(3000, 6))));
  }

  @Test
  void tellsOfAnAttemptAndOfTheVerdictOnceRecorded() throws IOException {
    try (Socket socket = new Socket("127.0.0.1", port)) {
      BufferedReader events = listen(socket);
      Reply reply = inspect("FE-LIVE");
      List<String> lines = readUntil(events, "event:inspection-closed");
      assertThat(lines).contains("event:attempt");
      String data = readUntil(events, "data:").get(0);
      assertThat(data).contains(reply.text("id"), "\"serial\":\"FE-LIVE\"", "\"verdict\":\"PASS\"");
    }
  }

  @Test
  void keepsRecordingAndTellingOthersWhenAListenerHangsUp() throws IOException {
    try (Socket gone = new Socket("127.0.0.1", port);
        Socket stays = new Socket("127.0.0.1", port)) {
      listen(gone);
      BufferedReader events = listen(stays);
      gone.setSoLinger(true, 0);
      gone.close();
      assertThat(inspect("FE-LIVE-2").status()).isEqualTo(201);
      assertThat(inspect("FE-LIVE-3").status()).isEqualTo(201);
      readUntil(events, "event:inspection-closed");
    }
  }

  @Test
  void refusesMoreListenersThanTheSettingsAllow() {
    InspectionSettings two =
        new InspectionSettings(
            Duration.ofHours(1), 0.5, Duration.ofDays(1), 1000, Duration.ofMinutes(1), 2);
    LiveEvents small = new LiveEvents(two);
    small.listen();
    small.listen();
    assertThat(small.listeners()).isEqualTo(2);
    assertThatThrownBy(small::listen).isInstanceOf(Refusal.class).hasMessageContaining("2 screens");
    small.stop();
  }
}
