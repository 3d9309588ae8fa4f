package evenpair.access;

import evenpair.access.SignInThrottle.Scope;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Refusal;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/** Signing in and out. */
@RestController
@RequestMapping("/api/session")
@Tag(name = "access")
class SessionController {
  private final SignIn signIn;
  private final Sessions sessions;
  private final SignedIn caller;
  private final AccountStore accounts;
  private final Passwords passwords;
  private final SignInThrottle throttle;
  private final AccessSettings settings;

  SessionController(
      SignIn signIn,
      Sessions sessions,
      SignedIn caller,
      AccountStore accounts,
      Passwords passwords,
      SignInThrottle throttle,
      AccessSettings settings) {
    this.signIn = signIn;
    this.sessions = sessions;
    this.caller = caller;
    this.accounts = accounts;
    this.passwords = passwords;
    this.throttle = throttle;
    this.settings = settings;
  }

  @Schema(name = "SignInRequest")
  record ByPassword(
      @Schema(example = "A. Marsh") String name,
      @Schema(example = "four words and a number 7") String password) {}

  @Schema(name = "BadgeSignInRequest")
  record ByBadge(@Schema(example = "70031442") String badge) {}

  @Schema(name = "PasswordChange")
  record NewPassword(String old, String password) {}

  /**
   * Who calls.
   *
   * @param person null if nobody is signed in
   * @param station null unless the browser is enrolled
   */
  @Schema(name = "Session")
  record Session(Person person, String station, long idleSeconds) {
    /**
     * @param by password or badge; a badge opens what an operator may do
     */
    @Schema(name = "SessionPerson")
    record Person(UUID person, String name, List<String> roles, String by) {}
  }

  @GetMapping
  @AllowedFor(Caller.ANYONE)
  @Operation(summary = "Who is signed in, and which station the browser belongs to")
  Session whoAmI(HttpServletRequest request) {
    Session.Person person =
        caller
            .person()
            .map(
                ref ->
                    new Session.Person(
                        ref,
                        caller.displayName().orElse(null),
                        Roles.words(caller.roles()),
                        sessions
                            .find(request)
                            .map(known -> Roles.lower(known.means()))
                            .orElse(null)))
            .orElse(null);
    return session(person);
  }

  @PostMapping(consumes = MediaType.APPLICATION_JSON_VALUE)
  @AllowedFor(Caller.ANYONE)
  @Operation(
      summary = "Sign in by name and password",
      description =
          "401 whether the name or the password is wrong; 429 with Retry-After after too many"
              + " attempts. Sets a cookie.")
  Session byPassword(@RequestBody ByPassword request, HttpServletRequest http) {
    AccountStore.Person person =
        signIn.byPassword(
            request.name(), request.password(), http.getRemoteAddr(), caller.station());
    sessions.begin(http, person.ref(), Sessions.Means.PASSWORD);
    return session(
        new Session.Person(person.ref(), person.name(), Roles.words(person.roles()), "password"));
  }

  @PostMapping(path = "/badge", consumes = MediaType.APPLICATION_JSON_VALUE)
  @AllowedFor(Caller.STATION)
  @Operation(
      summary = "Sign in by badge, in a browser that belongs to a station",
      description = "For operators. Sets a cookie.")
  Session byBadge(@RequestBody ByBadge request, HttpServletRequest http) {
    AccountStore.Person person = signIn.byBadge(request.badge(), caller.station().orElseThrow());
    sessions.begin(http, person.ref(), Sessions.Means.BADGE);
    return session(
        new Session.Person(
            person.ref(), person.name(), List.of(Roles.word(Caller.OPERATOR)), "badge"));
  }

  @DeleteMapping
  @AllowedFor(Caller.ANYONE)
  @ResponseStatus(HttpStatus.NO_CONTENT)
  @Operation(summary = "Sign out; the station stays enrolled")
  void signOut(HttpServletRequest http) {
    sessions.end(http);
  }

  @PutMapping(path = "/password", consumes = MediaType.APPLICATION_JSON_VALUE)
  @AllowedFor({Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
  @Operation(
      summary = "Change one's own password",
      description = "Every other session of the person ends.")
  Session changePassword(@RequestBody NewPassword request, HttpServletRequest http) {
    AccountStore.Person person =
        caller.person().flatMap(accounts::find).orElseThrow(SessionController::signedOut);
    throttle.count(Scope.NAME, person.name());
    if (!passwords.matches(request.old(), person.hash())) {
      throw new Refusal(403, "wrong-password", "The old password is not right.")
          .with("field", "old");
    }
    throttle.succeeded(Scope.NAME, person.name());
    accounts.setPassword(person.ref(), passwords.hash("password", request.password()));
    sessions.endAll(person.ref());
    sessions.begin(http, person.ref(), Sessions.Means.PASSWORD);
    return session(
        new Session.Person(person.ref(), person.name(), Roles.words(person.roles()), "password"));
  }

  private static Refusal signedOut() {
    return new Refusal(401, "sign-in-needed", "Sign in first.");
  }

  private Session session(Session.Person person) {
    return new Session(person, caller.station().orElse(null), settings.idle().toSeconds());
  }
}
