package evenpair.traceability;

import evenpair.access.SignedIn;
import evenpair.inspections.KnownUnits;
import evenpair.inspections.KnownUnits.KnownUnit;
import evenpair.traceability.DispatchStore.Head;
import evenpair.web.Ids;
import evenpair.web.Refusal;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Component;

/**
 * Takes dispatches. A reference is taken once: the same list under it again is answered like the
 * first time, another list is refused.
 */
@Component
class DispatchDesk {
  static final int MOST = 20_000;
  private static final int LONGEST = 64;
  private static final int NAMED = 20;

  private final KnownUnits units;
  private final DispatchStore store;
  private final SignedIn signedIn;
  private final Ids ids;
  private final Clock clock;

  DispatchDesk(KnownUnits units, DispatchStore store, SignedIn signedIn, Ids ids, Clock clock) {
    this.units = units;
    this.store = store;
    this.signedIn = signedIn;
    this.ids = ids;
    this.clock = clock;
  }

  /**
   * @param replayed true: it was there already, with the very same units
   */
  record Taken(Head head, boolean replayed) {}

  /**
   * @throws Refusal 422 naming every unknown serial, 409 for a reference that holds another list
   */
  Taken take(DispatchJson.Request request) {
    String reference = reference(request.reference());
    Map<String, KnownUnit> known = known(request.serials());
    Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
    Optional<Head> before = store.byReference(reference);
    // a list without a time that comes again means the time of the first
    Instant shipped =
        request.shippedAt() != null
            ? request.shippedAt().truncatedTo(ChronoUnit.MICROS)
            : before.map(Head::shippedAt).orElse(now);
    String digest = digest(shipped, List.copyOf(known.keySet()));
    if (before.isPresent()) {
      return replayed(before.get(), digest);
    }
    Head head =
        new Head(
            ids.next(),
            reference,
            shipped,
            now,
            signedIn.person().orElse(null),
            known.size(),
            digest);
    try {
      store.add(head, List.copyOf(known.values()));
      return new Taken(head, false);
    } catch (DuplicateKeyException e) {
      return replayed(store.byReference(reference).orElseThrow(() -> e), digest);
    }
  }

  private static Taken replayed(Head before, String digest) {
    if (!before.digest().equals(digest)) {
      throw new Refusal(
              409,
              "reference-taken",
              "The reference %s was recorded with another list of %d units or another time; a record is never changed. Send this one under a reference of its own."
                  .formatted(before.reference(), before.units()))
          .with("field", "reference");
    }
    return new Taken(before, true);
  }

  private static String reference(String sent) {
    String reference = sent == null ? "" : sent.strip();
    int length = reference.codePointCount(0, reference.length());
    if (length < 1
        || length > LONGEST
        || reference.codePoints().anyMatch(Character::isISOControl)) {
      throw new Refusal(
              400, "invalid-field", "The reference must have 1 to " + LONGEST + " characters.")
          .with("field", "reference")
          .with("expected", "1 to " + LONGEST + " characters");
    }
    return reference;
  }

  /**
   * @return by serial as stored, in the order sent, each once
   */
  private Map<String, KnownUnit> known(List<String> sent) {
    List<String> serials =
        sent == null ? List.of() : sent.stream().map(s -> s == null ? "" : s.strip()).toList();
    if (serials.isEmpty() || serials.size() > MOST) {
      throw new Refusal(
              400,
              "invalid-field",
              "A dispatch holds 1 to " + MOST + " serials, not " + serials.size() + ".")
          .with("field", "serials")
          .with("expected", "1 to " + MOST + " serials");
    }
    Map<String, KnownUnit> found = units.of(serials);
    List<String> unknown =
        serials.stream().filter(serial -> !found.containsKey(serial)).distinct().toList();
    if (!unknown.isEmpty()) {
      throw unknown(unknown);
    }
    Map<String, KnownUnit> known = new LinkedHashMap<>();
    serials.forEach(serial -> known.put(found.get(serial).serial(), found.get(serial)));
    return known;
  }

  private static Refusal unknown(List<String> unknown) {
    String more = unknown.size() > NAMED ? " and " + (unknown.size() - NAMED) + " more" : "";
    return new Refusal(
            422,
            "unknown-serials",
            "Of these units there is no inspection: "
                + String.join(", ", unknown.subList(0, Math.min(NAMED, unknown.size())))
                + more
                + ". Nothing was recorded.")
        .with("field", "serials")
        .with("unknown", unknown);
  }

  private static String digest(Instant shipped, List<String> serials) {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      // no serial holds a line end
      sha.update((shipped + "\n" + String.join("\n", serials)).getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(sha.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every JDK has SHA-256", e);
    }
  }
}
