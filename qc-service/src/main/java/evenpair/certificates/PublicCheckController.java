package evenpair.certificates;

import evenpair.ledger.Ledger;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Refusal;
import evenpair.web.Texts;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/** What the public may ask without signing in. */
@RestController
@AllowedFor(Caller.ANYONE)
@Tag(name = "Public check", description = "Is this certificate what the maker's record says?")
class PublicCheckController {
  /** A reader with a box of earphones; whoever guesses codes gets nowhere with it. */
  private static final int BURST = 20;

  private static final Duration PER_QUESTION = Duration.ofSeconds(3);

  /** All callers together, so that no crowd of addresses keeps the line's service busy. */
  private static final int BURST_OF_ALL = 100;

  private static final Duration PER_QUESTION_OF_ALL = Duration.ofMillis(50);

  private final PublicCheck check;
  private final Ledger ledger;
  private final Texts texts;
  private final RateLimit eachCaller;
  private final RateLimit allCallers;

  @Autowired
  PublicCheckController(PublicCheck check, Ledger ledger, Texts texts) {
    this(
        check,
        ledger,
        texts,
        new RateLimit(BURST, PER_QUESTION, System::nanoTime),
        new RateLimit(BURST_OF_ALL, PER_QUESTION_OF_ALL, System::nanoTime));
  }

  PublicCheckController(
      PublicCheck check, Ledger ledger, Texts texts, RateLimit eachCaller, RateLimit allCallers) {
    this.check = check;
    this.ledger = ledger;
    this.texts = texts;
    this.eachCaller = eachCaller;
    this.allCallers = allCallers;
  }

  @GetMapping("/api/certificates/{code}")
  @Operation(
      summary = "What the certificate with this code shows, from the sealed record",
      description =
          "Hyphens and spaces may stand anywhere; small letters, O for 0 and I or L for 1 are taken."
              + " Callers who ask often have to wait.")
  @ApiResponse(responseCode = "200", description = "The certificate's facts, table and plots")
  @ApiResponse(
      responseCode = "400",
      description = "The check character tells that the code is mistyped",
      content = @Content)
  @ApiResponse(responseCode = "404", description = "No certificate has it", content = @Content)
  @ApiResponse(
      responseCode = "429",
      description = "Asked too often; Retry-After says when to ask again",
      content = @Content)
  ResponseEntity<PublicRecord> certificate(
      @Parameter(example = "7K2M-9QDX-0V4T-RB8H-3ZJN-5") @PathVariable String code,
      Locale locale,
      HttpServletRequest request,
      HttpServletResponse response) {
    limit(request.getRemoteAddr(), locale, response);
    return ResponseEntity.ok().cacheControl(CacheControl.noStore()).body(check.find(code, locale));
  }

  @GetMapping("/api/certificates/keys")
  @Operation(
      summary = "The published keys",
      description =
          "Ed25519 public keys, X.509 in base64: what signs ledger blocks and the summaries in QR"
              + " codes.")
  Map<String, List<Key>> keys() {
    return Map.of(
        "items",
        ledger.publicKeys().entrySet().stream()
            .map(
                key ->
                    new Key(
                        key.getKey(),
                        "Ed25519",
                        Base64.getEncoder().encodeToString(key.getValue())))
            .toList());
  }

  private void limit(String address, Locale locale, HttpServletResponse response) {
    Duration wait = eachCaller.ask(CallerAddress.of(address));
    if (wait.isZero()) {
      wait = allCallers.ask("");
    }
    if (!wait.isZero()) {
      response.setHeader(HttpHeaders.RETRY_AFTER, Long.toString(wait.toSeconds() + 1));
      throw new Refusal(429, "too-often", texts.render(locale, "paper.check.too-often", Map.of()));
    }
  }

  record Key(String keyId, String algorithm, String publicKey) {}
}
