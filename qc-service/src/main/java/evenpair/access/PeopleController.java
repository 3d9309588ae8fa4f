package evenpair.access;

import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Page;
import evenpair.web.Paging;
import evenpair.web.Refusal;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/** Looks after people. */
@RestController
@RequestMapping("/api/people")
@AllowedFor(Caller.ADMINISTRATOR)
@Tag(name = "access")
class PeopleController {
  private final PeopleDesk desk;

  PeopleController(PeopleDesk desk) {
    this.desk = desk;
  }

  /**
   * @param account false for somebody who is only named by a rig, and cannot sign in
   */
  @Schema(name = "Person")
  record PersonView(
      UUID person,
      String name,
      String badge,
      List<String> roles,
      boolean account,
      boolean password,
      boolean active,
      boolean erasable) {
    static PersonView of(AccountStore.Person person) {
      return new PersonView(
          person.ref(),
          person.name(),
          person.badge(),
          Roles.words(person.roles()),
          person.hasAccount(),
          person.hash() != null,
          person.active(),
          person.erasable());
    }
  }

  @Schema(name = "NewPerson")
  record NewPerson(
      @Schema(example = "A. Marsh") String name,
      @Schema(example = "[\"operator\"]") List<String> roles,
      @Schema(example = "70031442", nullable = true) String badge) {}

  /**
   * @param badge null or empty for none
   */
  @Schema(name = "PersonChange")
  record Change(List<String> roles, String badge, boolean active) {}

  /** A password in the only moment in which it can be read. */
  @Schema(name = "PersonWithPassword")
  record WithPassword(PersonView person, String password) {}

  @GetMapping
  @Operation(summary = "People in the order of their names, those whom only a rig named included")
  Page<PersonView> list(
      @RequestParam(required = false) String after, @RequestParam(required = false) Integer limit) {
    Paging paging = Paging.of(after, limit);
    List<PersonView> found =
        desk.list(after == null ? "" : after, paging.rowsToRead()).stream()
            .map(PersonView::of)
            .toList();
    return Page.of(found, paging, PersonView::name);
  }

  @GetMapping("/{person}")
  @Operation(summary = "One person")
  PersonView read(@PathVariable UUID person) {
    return PersonView.of(desk.require(person));
  }

  @PostMapping(consumes = MediaType.APPLICATION_JSON_VALUE)
  @Operation(
      summary = "Add a person",
      description = "Answers with a random password, shown this once, to be changed by the person.")
  ResponseEntity<WithPassword> add(@RequestBody NewPerson request) {
    List<String> roles = requireRoles(request.roles());
    PeopleDesk.Opened opened = desk.add(request.name(), request.badge(), Roles.read(roles));
    URI place = URI.create("/api/people/" + opened.person().ref());
    return ResponseEntity.created(place)
        .body(new WithPassword(PersonView.of(opened.person()), opened.password()));
  }

  @PutMapping(path = "/{person}", consumes = MediaType.APPLICATION_JSON_VALUE)
  @Operation(
      summary = "Change roles, badge, and whether the person may sign in",
      description = "Counts at once, for sessions that are open, too.")
  PersonView change(@PathVariable UUID person, @RequestBody Change request) {
    return PersonView.of(
        desk.change(
            person, Roles.read(requireRoles(request.roles())), request.badge(), request.active()));
  }

  @PostMapping("/{person}/password")
  @Operation(
      summary = "Give a person a new random password",
      description = "Shown this once. Every session of the person ends.")
  WithPassword reset(@PathVariable UUID person) {
    PeopleDesk.Opened opened = desk.reset(person);
    return new WithPassword(PersonView.of(opened.person()), opened.password());
  }

  @DeleteMapping("/{person}")
  @ResponseStatus(HttpStatus.NO_CONTENT)
  @Operation(
      summary = "Erase name and badge",
      description = "For good. What the person measured and signed keeps a random reference.")
  void erase(@PathVariable UUID person) {
    desk.erase(person);
  }

  private static List<String> requireRoles(List<String> roles) {
    if (roles == null || roles.contains(null)) {
      throw new Refusal(400, "invalid-field", "\"roles\" must be a list of roles.")
          .with("field", "roles")
          .with("choices", Roles.words(Roles.OF_PEOPLE));
    }
    return roles;
  }
}
