package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.acoustics.Samples;
import evenpair.captures.WavWriter;
import evenpair.inspections.TestLine.Reply;
import evenpair.ledger.Digests;
import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * What cannot be decoded or names something unknown is refused with a clear sentence, and nothing
 * at all is stored.
 */
@InspectionTest
class BadInputTests {
  private static final String STATION = "bench-b";

  @LocalServerPort private int port;
  @Autowired private JdbcClient jdbc;
  @Autowired private SwitchableStore store;
  private TestLine line;
  private byte[] left;
  private byte[] right;

  @BeforeAll
  void station() {
    line = new TestLine(port);
    line.makeStation(STATION);
    left = TestSound.wav(TestSound.capture(1, TestSound.peak(3000, 6)));
    right = TestSound.wav(TestSound.capture(2, TestSound.peak(3000, 6)));
  }

  private Reply refused(int status, String type, Multipart parts) {
    List<Integer> before = Recorded.everything(jdbc);
    Reply reply = line.inspect(parts);
    assertThat(reply.status()).as("%s", reply.json()).isEqualTo(status);
    assertThat(reply.text("type")).isEqualTo("/problems/" + type);
    assertThat(reply.raw().headers().firstValue("Content-Type").orElse(""))
        .startsWith("application/problem+json");
    assertThat(Recorded.everything(jdbc)).isEqualTo(before);
    return reply;
  }

  private static Multipart good(String serial) {
    return new Multipart().json("inspection", TestLine.inspection(serial, "plain", STATION));
  }

  @Nested
  class Recordings {
    private Reply refusedLeft(int status, String type, byte[] wav) {
      Reply reply = refused(status, type, good("FE-BAD-WAV").wav("left", wav).wav("right", right));
      assertThat(reply.text("part")).isEqualTo("left");
      assertThat(store.has(Digests.of(wav))).isFalse();
      return reply;
    }

    @Test
    void refusesAnEmptyFile() {
      assertThat(refusedLeft(400, "empty-part", new byte[0]).text("detail"))
          .contains("'left'", "0 bytes");
    }

    @Test
    void refusesTextNamedWav() {
      byte[] text = "frequency,level\n20,80\n".getBytes(StandardCharsets.UTF_8);
      assertThat(refusedLeft(422, "unreadable-capture", text).text("detail"))
          .contains("not a WAV file");
    }

    @Test
    void refusesATruncatedFile() {
      assertThat(
              refusedLeft(422, "unreadable-capture", Arrays.copyOf(left, left.length / 2))
                  .text("detail"))
          .contains("cut short");
    }

    @Test
    void refusesAFileWithoutSamples() {
      assertThat(refusedLeft(422, "unreadable-capture", TestSound.wav(new float[0])).text("detail"))
          .contains("no samples");
    }

    @Test
    void refusesSamplesThatAreNoNumbers() {
      byte[] wav = left.clone();
      ByteBuffer.wrap(wav).order(ByteOrder.LITTLE_ENDIAN).putFloat(wav.length - 4000, Float.NaN);
      assertThat(refusedLeft(422, "unreadable-capture", wav).text("place")).contains("sample");
    }

    @Test
    void refusesTwoChannelsWhereOneBelongs() {
      byte[] stereo = TestSound.wav(TestSound.capture(3), TestSound.capture(4));
      assertThat(refusedLeft(422, "wrong-channels", stereo).text("detail"))
          .contains("2 channels", "'both'");
    }

    @Test
    void refusesOneChannelWhereTwoBelong() {
      Reply reply = refused(422, "wrong-channels", good("FE-BAD-BOTH").wav("both", left));
      assertThat(reply.text("detail")).contains("'both' has 1 channel", "'left' and 'right'");
    }

    @Test
    void refusesASampleRateWithoutStimulus() {
      byte[] wav = WavWriter.float32(new Samples(TestSound.capture(5), 32_000));
      Reply reply = refusedLeft(422, "sample-rate", wav);
      assertThat(reply.text("detail")).contains("32000 Hz");
      assertThat(reply.json().path("choices").toString()).contains("sweep-48000");
    }

    @Test
    void refusesAnotherSampleRateThanTheNamedStimulus() {
      String json =
          TestLine.inspection("FE-BAD-RATE", "plain", STATION, ", \"stimulus\": \"sweep-44100\"");
      Multipart parts =
          new Multipart().json("inspection", json).wav("left", left).wav("right", right);
      assertThat(refused(422, "sample-rate", parts).text("expected")).isEqualTo("44100 Hz");
    }

    @Test
    void refusesAnUnknownStimulus() {
      String json =
          TestLine.inspection("FE-BAD-STIM", "plain", STATION, ", \"stimulus\": \"chirp\"");
      refused(
          422,
          "unknown-stimulus",
          new Multipart().json("inspection", json).wav("left", left).wav("right", right));
    }
  }

  @Nested
  class Curves {
    private Reply refusedCurve(int status, String type, String csv) {
      Reply reply = refused(status, type, good("FE-BAD-CSV").wav("left", left).csv("right", csv));
      assertThat(reply.text("part")).isEqualTo("right");
      return reply;
    }

    @Test
    void refusesFallingFrequencies() {
      Reply reply = refusedCurve(422, "unreadable-capture", "100,80\n200,81\n150,82\n");
      assertThat(reply.text("place")).contains("line 3");
    }

    @Test
    void refusesLetters() {
      assertThat(refusedCurve(422, "unreadable-capture", "100,80\n200,loud\n").text("place"))
          .contains("line 2");
    }

    @Test
    void refusesOneColumn() {
      refusedCurve(422, "unreadable-capture", "100\n200\n300\n");
    }

    @Test
    void refusesTenMillionRowsByTheirSizeAlone() {
      // The container counts while it reads: 40 MB are more than any file may have, so that none of
      // it is parsed.
      String csv = "1,1\n".repeat(10_000_000);
      Reply reply =
          refused(413, "upload-too-large", good("FE-BAD-CSV").wav("left", left).csv("right", csv));
      assertThat(reply.text("detail")).contains("evenpair.capture-max-bytes");
    }

    @Test
    void refusesACurveThatIsLargerThanCurvesAre() {
      assertThat(refusedCurve(413, "part-too-large", "1,1\n".repeat(2_100_000)).text("detail"))
          .contains("8388608");
    }

    @Test
    void refusesMoreRowsThanACurveMayHave() {
      StringBuilder csv = new StringBuilder();
      for (int i = 0; i < 250_000; i++) {
        csv.append(20 + i).append(",80\n");
      }
      refusedCurve(422, "unreadable-capture", csv.toString());
    }
  }

  @Nested
  class Parts {
    @Test
    void refusesARequestWithoutTheJson() {
      assertThat(
              refused(400, "missing-part", new Multipart().wav("left", left).wav("right", right))
                  .text("part"))
          .isEqualTo("inspection");
    }

    @Test
    void refusesARequestWithoutOneSide() {
      assertThat(refused(400, "missing-part", good("FE-ONE").wav("left", left)).text("part"))
          .isEqualTo("right");
    }

    @Test
    void refusesUnknownRepeatedAndContradictingParts() {
      refused(
          400,
          "unknown-part",
          good("FE-P").wav("left", left).wav("right", right).wav("middle", left));
      refused(
          400,
          "repeated-part",
          good("FE-P").wav("left", left).wav("left", left).wav("right", right));
      refused(
          400,
          "parts-contradict",
          good("FE-P").wav("left", left).wav("right", right).wav("both", left));
      refused(
          415,
          "unsupported-part",
          good("FE-P").wav("left", left).part("right", "right.png", "image/png", new byte[9]));
    }
  }

  @Nested
  class Fields {
    private Reply refusedJson(int status, String type, String json) {
      return refused(
          status,
          type,
          new Multipart().json("inspection", json).wav("left", left).wav("right", right));
    }

    @Test
    void refusesUnknownFieldsByName() {
      Reply reply =
          refusedJson(
              400,
              "unknown-field",
              TestLine.inspection("FE-F", "plain", STATION, ", \"colour\": 1"));
      assertThat(reply.text("field")).isEqualTo("colour");
      assertThat(reply.text("expected")).contains("leftEarpiece");
    }

    @Test
    void refusesAFieldThatStandsTwice() {
      refusedJson(
          400,
          "invalid-json",
          TestLine.inspection("FE-F", "plain", STATION, ", \"batch\": \"FB-2\""));
    }

    @Test
    void listsEveryProblemAtOnce() {
      Reply reply =
          refusedJson(
              400,
              "invalid-field",
              "{\"serial\": 5, \"seating\": \"one\", \"measuredAt\": \"noon\"}");
      assertThat(
              reply.json().path("problems").valueStream().map(p -> p.path("field").stringValue()))
          .contains(
              "serial",
              "seating",
              "measuredAt",
              "batch",
              "product",
              "tuning",
              "station",
              "operator");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{", "[]", "null", "{\"serial\": \"FE-1\"} {}", "not json"})
    void refusesWhatIsNotOneObject(String json) {
      List<Integer> before = Recorded.everything(jdbc);
      Reply reply =
          line.inspect(
              new Multipart().json("inspection", json).wav("left", left).wav("right", right));
      assertThat(reply.status()).isEqualTo(400);
      assertThat(reply.text("part")).isEqualTo("inspection");
      assertThat(Recorded.everything(jdbc)).isEqualTo(before);
    }

    @Test
    void namesTheKnownProductsTuningsAndStations() {
      String json = TestLine.inspection("FE-F", "plain", STATION);
      assertThat(
              refusedJson(422, "unknown-product", json.replace("fern-1", "oak-9"))
                  .json()
                  .path("choices")
                  .toString())
          .contains("fern-1");
      assertThat(
              refusedJson(422, "unknown-tuning", json.replace("plain", "bright"))
                  .json()
                  .path("choices")
                  .toString())
          .contains("warm");
      assertThat(
              refusedJson(422, "unknown-station", json.replace(STATION, "bench-99"))
                  .json()
                  .path("choices")
                  .toString())
          .contains(STATION);
      refusedJson(422, "no-active-limit-set", json.replace("plain", "unset"));
    }

    @Test
    void refusesASimulatorOfAnotherTypeWithBothNames() {
      String json = TestLine.inspection("MO-1", "plain", STATION).replace("fern-1", "moss-1");
      assertThat(refusedJson(422, "ear-simulator-differs", json).text("detail"))
          .contains("IEC 60318-4", "IEC 60318-5");
    }

    @ParameterizedTest
    @ValueSource(strings = {"FE-\\\"1", "FE-'1", "FE 1", "FE-1/2", "FE-1\\u0000", "FE-<b>"})
    void refusesSerialsWithOtherCharacters(String serial) {
      Reply reply =
          refusedJson(400, "invalid-field", TestLine.inspection(serial, "plain", STATION));
      assertThat(reply.text("field")).isEqualTo("serial");
      assertThat(reply.text("expected")).isEqualTo("1 to 64 letters, digits and . _ -");
    }

    @Test
    void refusesASerialOf300Characters() {
      refusedJson(400, "invalid-field", TestLine.inspection("F".repeat(300), "plain", STATION));
    }

    @Test
    void takesChineseCharactersWhereTheProductsPatternDoes() {
      Reply narrowed =
          refusedJson(422, "serial-pattern", TestLine.inspection("耳机-001", "plain", STATION));
      assertThat(narrowed.text("detail")).contains("耳机-001", "Fern 1", "FE-");

      String json = TestLine.inspection("耳机-001", "plain", STATION).replace("fern-1", "open-1");
      Reply taken = line.inspect(json, left, right);
      assertThat(taken.text("verdict")).as("%s", taken.json()).isEqualTo("PASS");
      assertThat(line.get(taken.json().path("links").path("unit").stringValue()).text("serial"))
          .isEqualTo("耳机-001");
    }

    @Test
    void readsTheSameSerialWhicheverWayItsLettersAreComposed() {
      String json = TestLine.inspection("\u00c9-7", "plain", STATION).replace("fern-1", "open-1");
      assertThat(line.inspect(json, left, right).text("serial")).isEqualTo("\u00c9-7");
      assertThat(line.inspect(json.replace("\u00c9", "E\u0301"), left, right).status())
          .isEqualTo(409);
    }

    @Test
    void refusesASerialThatBelongsToAnotherProduct() {
      String json = TestLine.inspection("FE-TAKEN", "plain", STATION);
      assertThat(line.inspect(json, left, right).status()).isEqualTo(201);
      Reply other = refusedJson(409, "serial-of-another-product", json.replace("fern-1", "open-1"));
      assertThat(other.text("detail")).contains("fern-1");
    }

    @Test
    void refusesASecondSeatingWithoutAFirst() {
      Reply reply =
          refusedJson(
              409,
              "unexpected-seating",
              TestLine.inspection("FE-F2", "plain", STATION, ", \"seating\": 2"));
      assertThat(reply.json().path("expected").intValue()).isEqualTo(1);
    }
  }

  @Nested
  class Accidents {
    @Test
    void storesNothingOfAClientThatHangsUpMidway() throws IOException {
      List<Integer> before = Recorded.everything(jdbc);
      byte[] body = good("FE-HANGUP").wav("left", left).unfinished();
      String head =
          """
          POST /api/inspections HTTP/1.1\r
          Host: 127.0.0.1\r
          Content-Type: %s\r
          Content-Length: %d\r
          \r
          """
              .formatted(Multipart.CONTENT_TYPE, body.length + 100_000);
      try (Socket socket = new Socket("127.0.0.1", port)) {
        OutputStream out = socket.getOutputStream();
        out.write(head.getBytes(StandardCharsets.US_ASCII));
        out.write(body);
        out.flush();
        // Hung up hard: whatever the service still sends meets a reset.
        socket.setSoLinger(true, 0);
      }
      Reply afterwards = line.inspect(good("FE-HANGUP").wav("left", left).wav("right", right));
      assertThat(afterwards.status()).isEqualTo(201);
      assertThat(Recorded.of(jdbc, "FE-HANGUP")).isEqualTo(new Recorded(1, 1, 1, 2));
      assertThat(Recorded.everything(jdbc).get(0)).isEqualTo(before.get(0) + 1);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1})
    void storesNothingOnAFullDiskAndWorksAgainAfterwards(int capturesThatStillFit) {
      String serial = "FE-FULL-" + capturesThatStillFit;
      Multipart parts = good(serial).wav("left", left).wav("right", right);
      store.fillUpAfter(capturesThatStillFit);
      try {
        Reply reply = refused(507, "storage-failed", parts);
        assertThat(reply.text("detail")).contains("nothing was recorded", "free some");
      } finally {
        store.freeSpace();
      }
      Reply again = line.inspect(good(serial).wav("left", left).wav("right", right));
      assertThat(again.text("verdict")).isEqualTo("PASS");
      assertThat(Recorded.of(jdbc, serial)).isEqualTo(new Recorded(1, 1, 1, 2));
    }
  }
}
