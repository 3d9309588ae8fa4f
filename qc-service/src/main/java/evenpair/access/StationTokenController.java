package evenpair.access;

import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Cookies;
import evenpair.web.Refusal;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseCookie;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/** Tokens of a station, and browsers that belong to it. */
@RestController
@RequestMapping("/api/stations/{station}")
@AllowedFor(Caller.ADMINISTRATOR)
@Tag(name = "access")
class StationTokenController {
  /** The longest that browsers keep a cookie. */
  private static final Duration ENROLLED = Duration.ofDays(400);

  private static final String NAME = "(?=.*\\S)[^\\p{Cntrl}]{1,64}";

  private final StationTokens tokens;
  private final KnownBadges badges;
  private final SignedIn caller;

  StationTokenController(StationTokens tokens, KnownBadges badges, SignedIn caller) {
    this.tokens = tokens;
    this.badges = badges;
    this.caller = caller;
  }

  @Schema(name = "TokenName")
  record Name(@Schema(example = "rig by the window") String name) {}

  @Schema(name = "StationToken")
  record TokenView(
      UUID id, String name, Instant madeAt, Instant lastUsedAt, Instant revokedAt, boolean valid) {
    static TokenView of(StationTokens.Token token) {
      return new TokenView(
          token.id(),
          token.name(),
          token.madeAt(),
          token.lastUsedAt(),
          token.revokedAt(),
          token.revokedAt() == null);
    }
  }

  /**
   * @param token to be sent as {@code Authorization: Bearer …}; it cannot be read again
   */
  @Schema(name = "NewStationToken")
  record NewToken(UUID id, String station, String name, String token) {}

  @Schema(name = "StationTokens")
  record Tokens(List<TokenView> items) {}

  @Schema(name = "Enrolment")
  record Enrolment(String station) {}

  @GetMapping("/tokens")
  @Operation(summary = "Tokens of the station, the newest first")
  Tokens list(@PathVariable String station) {
    return new Tokens(tokens.list(station).stream().map(TokenView::of).toList());
  }

  @PostMapping(path = "/tokens", consumes = MediaType.APPLICATION_JSON_VALUE)
  @Operation(summary = "Make a token; it is shown this once")
  ResponseEntity<NewToken> make(@PathVariable String station, @RequestBody Name request) {
    StationTokens.Made made = tokens.make(station, name(request), caller.person().orElse(null));
    URI place = URI.create("/api/stations/" + station + "/tokens/" + made.token().id());
    return ResponseEntity.created(place)
        .cacheControl(org.springframework.http.CacheControl.noStore())
        .body(new NewToken(made.token().id(), station, made.token().name(), made.secret()));
  }

  @DeleteMapping("/tokens/{token}")
  @ResponseStatus(HttpStatus.NO_CONTENT)
  @Operation(summary = "Revoke a token, at once and for good")
  void revoke(@PathVariable String station, @PathVariable UUID token) {
    tokens.revoke(station, token, caller.person().orElse(null));
  }

  @PostMapping(path = "/enrolment", consumes = MediaType.APPLICATION_JSON_VALUE)
  @AllowedFor({Caller.STATION, Caller.ADMINISTRATOR})
  @Operation(
      summary = "Make this browser belong to the station",
      description =
          "By an administrator, which makes a token of that name for it, or with a token of the"
              + " station in the header. Sets a cookie that no script can read.")
  ResponseEntity<Enrolment> enrol(
      @PathVariable String station, @RequestBody Name request, HttpServletRequest http) {
    String secret =
        Cookies.bearer(http)
            .orElseGet(() -> tokens.make(station, name(request), administrator()).secret());
    return cookie(station, secret, ENROLLED, http);
  }

  private UUID administrator() {
    if (!caller.roles().contains(Caller.ADMINISTRATOR)) {
      throw new Refusal(
          403,
          "not-allowed",
          "This browser belongs to the station already; more are for administrators.");
    }
    return caller.person().orElse(null);
  }

  @DeleteMapping("/enrolment")
  @AllowedFor({Caller.STATION, Caller.ADMINISTRATOR})
  @Operation(summary = "Make this browser belong to no station; its token stays valid")
  ResponseEntity<Enrolment> leave(@PathVariable String station, HttpServletRequest http) {
    return cookie(station, "", Duration.ZERO, http);
  }

  private static ResponseEntity<Enrolment> cookie(
      String station, String value, Duration age, HttpServletRequest http) {
    ResponseCookie cookie =
        ResponseCookie.from(Cookies.STATION, value)
            .httpOnly(true)
            .secure(http.isSecure())
            .sameSite("Strict")
            .path("/")
            .maxAge(age)
            .build();
    return ResponseEntity.ok()
        .header(HttpHeaders.SET_COOKIE, cookie.toString())
        .body(new Enrolment(station));
  }

  @GetMapping("/known-badges")
  @AllowedFor(Caller.STATION)
  @Operation(
      summary = "Slow digests of the badges of those who signed in at this station lately",
      description =
          "For the bench, while the service is away: derived = PBKDF2(HMAC-SHA-256, UTF-8 bytes of"
              + " the badge, salt, iterations, 32 bytes), base64.")
  KnownBadges.Known knownBadges(@PathVariable String station) {
    return badges.at(station);
  }

  private static String name(Name request) {
    if (request.name() == null || !request.name().matches(NAME)) {
      throw new Refusal(400, "invalid-field", "\"name\" must say where the token is used.")
          .with("field", "name")
          .with("expected", "1 to 64 characters");
    }
    return request.name().strip();
  }
}
