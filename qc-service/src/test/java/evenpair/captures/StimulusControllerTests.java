package evenpair.captures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import com.jayway.jsonpath.JsonPath;
import evenpair.EvenpairDatabaseTest;
import evenpair.acoustics.Sweep;
import evenpair.acoustics.SweepSignal;
import java.security.MessageDigest;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@EvenpairDatabaseTest
class StimulusControllerTests {
  @Autowired private MockMvc mvc;

  @Test
  void saysTheParametersOfTheDefault() throws Exception {
    mvc.perform(get("/api/stimuli/default"))
        .andExpect(status().isOk())
        .andExpect(jsonPath("$.name").value("sweep-48000"))
        .andExpect(jsonPath("$.fromHz").value(10.0))
        .andExpect(jsonPath("$.toHz").value(22000.0))
        .andExpect(jsonPath("$.sampleRateHz").value(48000.0))
        // 0.35 s + 1.2 s + 0.3 s at 48 kHz
        .andExpect(jsonPath("$.samples").value(88_800))
        .andExpect(jsonPath("$.amplitudeDbfs").value(-12.0))
        .andExpect(
            jsonPath("$.caution")
                .value(containsString("Never play it with the earpieces in an ear")));
  }

  @Test
  void listsAllThree() throws Exception {
    mvc.perform(get("/api/stimuli"))
        .andExpect(status().isOk())
        .andExpect(
            jsonPath("$.items[*].name")
                .value(containsInAnyOrder("sweep-44100", "sweep-48000", "sweep-96000")));
  }

  @Test
  void sendsTheVerySignalWithTheDigestThatItNames() throws Exception {
    byte[] wav = audio("sweep-44100");
    String json =
        mvc.perform(get("/api/stimuli/sweep-44100")).andReturn().getResponse().getContentAsString();
    String digest = HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(wav));
    assertThat(JsonPath.<String>read(json, "$.sha256")).isEqualTo(digest);
    assertThat(WavReader.read(wav).channels())
        .singleElement()
        .satisfies(
            samples ->
                assertThat(samples.values())
                    .containsExactly(SweepSignal.render(Sweep.standard(44_100))));
  }

  @Test
  void sendsTheSameBytesEveryTime() throws Exception {
    assertThat(audio("default")).isEqualTo(audio("sweep-48000"));
  }

  @Test
  void namesTheKnownOnesWhenAskedForAnother() throws Exception {
    for (String path : new String[] {"/api/stimuli/pink-noise", "/api/stimuli/pink-noise/audio"}) {
      mvc.perform(get(path).accept("audio/wav", "*/*"))
          .andExpect(status().isNotFound())
          .andExpect(header().string("Content-Type", "application/problem+json"))
          .andExpect(jsonPath("$.type").value("/problems/unknown-stimulus"))
          .andExpect(jsonPath("$.choices").isNotEmpty());
    }
  }

  private byte[] audio(String name) throws Exception {
    return mvc.perform(get("/api/stimuli/" + name + "/audio"))
        .andExpect(status().isOk())
        .andExpect(header().string("Content-Type", "audio/wav"))
        .andReturn()
        .getResponse()
        .getContentAsByteArray();
  }
}
