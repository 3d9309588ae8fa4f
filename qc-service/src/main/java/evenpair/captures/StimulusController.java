package evenpair.captures;

import evenpair.acoustics.Samples;
import evenpair.acoustics.Sweep;
import evenpair.acoustics.SweepSignal;
import evenpair.captures.Stimuli.Stimulus;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Refusal;
import evenpair.web.Texts;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

@RestController
@AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
@RequestMapping("/api/stimuli")
@Tag(name = "stimuli", description = "The test signals that stations play")
class StimulusController {
  private final Stimuli stimuli;
  private final Texts texts;

  /** Half a megabyte at most each, rendered at first use. */
  private final Map<Stimulus, Audio> audio = new ConcurrentHashMap<>();

  StimulusController(Stimuli stimuli, Texts texts) {
    this.stimuli = stimuli;
    this.texts = texts;
  }

  @GetMapping
  @Operation(summary = "Every stimulus, the lowest sample rate first")
  StimulusList list(Locale locale) {
    return new StimulusList(
        stimuli.all().stream().map(stimulus -> view(stimulus, locale)).toList());
  }

  @GetMapping("/{name}")
  @Operation(summary = "A stimulus' parameters", description = "`default` is the one at 48 kHz.")
  @ApiResponse(responseCode = "200", useReturnTypeSchema = true)
  @ApiResponse(
      responseCode = "404",
      description = "Unknown stimulus; `choices` are the known names",
      content = @Content(mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE))
  StimulusView get(@PathVariable String name, Locale locale) {
    return view(require(name), locale);
  }

  @GetMapping(
      path = "/{name}/audio",
      produces = {"audio/wav", MediaType.APPLICATION_PROBLEM_JSON_VALUE})
  @Operation(
      summary = "The exact signal to play",
      description =
          "Mono WAV of 32-bit floats, silences included; the same bytes every time, of the SHA-256 that the stimulus names."
              + " Loud: never play it with the earpieces in an ear.")
  @ApiResponse(
      responseCode = "200",
      content =
          @Content(mediaType = "audio/wav", schema = @Schema(type = "string", format = "binary")))
  ResponseEntity<byte[]> audio(@PathVariable String name) {
    Stimulus stimulus = require(name);
    Audio file = audioOf(stimulus);
    return ResponseEntity.ok()
        .contentType(MediaType.parseMediaType("audio/wav"))
        .eTag(file.sha256())
        .header(
            HttpHeaders.CONTENT_DISPOSITION,
            ContentDisposition.inline().filename(stimulus.name() + ".wav").build().toString())
        .body(file.wav());
  }

  private Stimulus require(String name) {
    return stimuli
        .find(name)
        .orElseThrow(
            () ->
                new Refusal(404, "unknown-stimulus", "There is no stimulus of that name.")
                    .with("field", "name")
                    .with("choices", stimuli.all().stream().map(Stimulus::name).toList()));
  }

  private StimulusView view(Stimulus stimulus, Locale locale) {
    Sweep sweep = stimulus.sweep();
    Audio file = audioOf(stimulus);
    return new StimulusView(
        stimulus.name(),
        "synchronised exponential sweep",
        sweep.fromHz(),
        sweep.toHz(),
        sweep.seconds(),
        sweep.rateHz(),
        sweep.fadeSeconds(),
        sweep.leadSeconds(),
        sweep.tailSeconds(),
        sweep.amplitude(),
        20 * Math.log10(sweep.amplitude()),
        file.samples(),
        file.sha256(),
        texts.render(locale, "stimulus.caution", Map.of()));
  }

  private Audio audioOf(Stimulus stimulus) {
    return audio.computeIfAbsent(stimulus, key -> Audio.of(key.sweep()));
  }

  /**
   * @param samples samples of the whole file, silences included
   */
  private record Audio(byte[] wav, int samples, String sha256) {
    static Audio of(Sweep sweep) {
      float[] signal = SweepSignal.render(sweep);
      byte[] wav = WavWriter.float32(new Samples(signal, sweep.rateHz()));
      return new Audio(wav, signal.length, sha256(wav));
    }

    private static String sha256(byte[] bytes) {
      try {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
      } catch (NoSuchAlgorithmException e) {
        throw new IllegalStateException("every Java platform has SHA-256", e);
      }
    }
  }

  record StimulusList(List<StimulusView> items) {}

  /**
   * @param amplitude peak re full scale
   * @param samples samples of the whole signal, silences included
   * @param sha256 of the audio file's bytes
   * @param caution to be shown before it is played
   */
  record StimulusView(
      @Schema(example = "sweep-48000") String name,
      String kind,
      @Schema(example = "10") double fromHz,
      @Schema(example = "22000") double toHz,
      @Schema(example = "1.2") double seconds,
      @Schema(example = "48000") double sampleRateHz,
      @Schema(example = "0.01") double fadeSeconds,
      @Schema(example = "0.35") double leadSeconds,
      @Schema(example = "0.3") double tailSeconds,
      @Schema(example = "0.251188643150958") double amplitude,
      @Schema(example = "-12") double amplitudeDbfs,
      @Schema(example = "88800") int samples,
      String sha256,
      String caution) {}
}
