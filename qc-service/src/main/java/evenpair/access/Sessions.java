package evenpair.access;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpSession;
import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.springframework.session.FindByIndexNameSessionRepository;
import org.springframework.stereotype.Component;

/**
 * Sessions of people. A session holds the person's reference and how they signed in, nothing else:
 * name and roles are read anew with every request, so that a change counts at once.
 */
@Component
class Sessions {
  private static final String PERSON = FindByIndexNameSessionRepository.PRINCIPAL_NAME_INDEX_NAME;
  private static final String MEANS = "evenpair.means";
  private static final String BEGUN = "evenpair.begun";

  /** How somebody signed in. */
  enum Means {
    PASSWORD,
    /** Whoever finds a badge has it: it opens no more than what an operator does. */
    BADGE
  }

  /** What a session says. */
  record Known(UUID person, Means means, Instant begunAt) {}

  private final AccessSettings settings;
  private final FindByIndexNameSessionRepository<?> repository;
  private final Clock clock;

  Sessions(AccessSettings settings, FindByIndexNameSessionRepository<?> repository, Clock clock) {
    this.settings = settings;
    this.repository = repository;
    this.clock = clock;
  }

  /** Begins a session under a new id: one that somebody else may have planted is worth nothing. */
  void begin(HttpServletRequest request, UUID person, Means means) {
    HttpSession before = request.getSession(false);
    if (before != null) {
      before.invalidate();
    }
    HttpSession session = request.getSession(true);
    session.setMaxInactiveInterval((int) settings.idle().toSeconds());
    session.setAttribute(PERSON, person.toString());
    session.setAttribute(MEANS, means.name());
    session.setAttribute(BEGUN, clock.instant().toEpochMilli());
  }

  /**
   * @return empty without a session, and once it has lasted its longest
   */
  Optional<Known> find(HttpServletRequest request) {
    HttpSession session = request.getSession(false);
    if (session == null || session.getAttribute(PERSON) == null) {
      return Optional.empty();
    }
    Instant begun = Instant.ofEpochMilli((Long) session.getAttribute(BEGUN));
    if (!clock.instant().isBefore(begun.plus(settings.longest()))) {
      session.invalidate();
      return Optional.empty();
    }
    UUID person = UUID.fromString((String) session.getAttribute(PERSON));
    return Optional.of(
        new Known(person, Means.valueOf((String) session.getAttribute(MEANS)), begun));
  }

  void end(HttpServletRequest request) {
    HttpSession session = request.getSession(false);
    if (session != null) {
      session.invalidate();
    }
  }

  /** Ends every session of a person, at every process. */
  void endAll(UUID person) {
    repository.findByPrincipalName(person.toString()).keySet().forEach(repository::deleteById);
  }
}
