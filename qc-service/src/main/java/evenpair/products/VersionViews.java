package evenpair.products;

import com.fasterxml.jackson.annotation.JsonInclude;
import evenpair.access.People;
import evenpair.products.VersionRows.Golden;
import evenpair.products.VersionRows.Limits;
import evenpair.products.VersionRows.SignOff;
import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import java.time.Clock;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;

/** Versions as JSON carries them. */
@Component
class VersionViews {
  private static final String PERSON = "(?=.*\\S)[^\\p{Cntrl}]{1,64}";
  private static final String PERSON_RULE = "a name or badge of 1 to 64 characters";
  private static final String REASON = "(?=.*\\S)[^\\p{Cntrl}]{1,500}";
  private static final String REASON_RULE = "a sentence of 1 to 500 characters that says why";

  private final People people;
  private final LimitsLoader loader;
  private final Clock clock;

  VersionViews(People people, LimitsLoader loader, Clock clock) {
    this.people = people;
    this.loader = loader;
    this.clock = clock;
  }

  /** The body of a sign-off. */
  record Approval(
      @Schema(example = "qe-2", description = "the signed-in engineer, not the author; or nothing")
          @Pattern(regexp = PERSON, message = PERSON_RULE)
          String approver,
      @Schema(example = "Batch SW-2647 sits 0.3 dB inside the old treble window.")
          @NotNull(message = REASON_RULE)
          @Pattern(regexp = REASON, message = REASON_RULE)
          String reason) {}

  /** The body of an activation. */
  record ActivationTime(
      @Schema(example = "2026-12-01T06:00:00Z", description = "ISO 8601; now if absent")
          Instant from) {}

  record GoldenName(
      @Schema(example = "1") int version,
      @Schema(example = "plain-golden.csv") String name,
      @Schema(description = "SHA-256 of its canonical CSV") String digest) {}

  /**
   * One version of a limit set.
   *
   * @param activeFrom when it was last set to judge from; 1970 for a tuning's first version, which
   *     has none before it
   * @param author null if it came from a file, or the name was erased
   */
  @JsonInclude(JsonInclude.Include.ALWAYS)
  record LimitSetView(
      @Schema(example = "sedge-2") String product,
      @Schema(example = "plain") String tuning,
      @Schema(example = "3") int version,
      @Schema(
              example = "approved",
              allowableValues = {"draft", "approved"})
          String state,
      @Schema(description = "whether it judges now") boolean active,
      Instant activeFrom,
      @Schema(description = "SHA-256 over its canonical YAML and its golden response's digest")
          String digest,
      GoldenName golden,
      @Schema(
              example = "file",
              allowableValues = {"file", "person"})
          String origin,
      String author,
      Instant madeAt,
      @Schema(
              example = "file",
              allowableValues = {"file", "person"})
          String approvedBy,
      String approver,
      String approvalReason,
      Instant approvedAt,
      @Schema(description = "whether this very version stood in limits/ when the service started")
          boolean inLimits,
      @Schema(description = "the set itself, with the keys of its YAML; in a list left out")
          @JsonInclude(JsonInclude.Include.NON_NULL)
          Map<String, Object> limitSet) {}

  LimitSetView view(Snapshot known, Limits row, boolean whole) {
    Golden golden = known.golden(row.goldenId());
    boolean active =
        known
            .activeAt(row.product(), row.tuning(), clock.instant())
            .filter(activation -> activation.version().equals(row.id()))
            .isPresent();
    SignOff signOff = row.signOff();
    return new LimitSetView(
        row.product(),
        row.tuning(),
        row.version(),
        state(signOff),
        active,
        known.activeFrom(row.id()).orElse(null),
        row.digest(),
        new GoldenName(golden.version(), golden.name(), golden.digest()),
        origin(row.author()),
        name(row.author()),
        row.madeAt(),
        signOff == null ? null : origin(signOff.approver()),
        signOff == null ? null : name(signOff.approver()),
        signOff == null ? null : signOff.reason(),
        signOff == null ? null : signOff.at(),
        loader.inFiles(row.digest()),
        whole ? LimitSetTree.of(known.stored(row.id()).orElseThrow().set()) : null);
  }

  static String state(SignOff signOff) {
    return signOff == null ? "draft" : "approved";
  }

  static String origin(UUID person) {
    return person == null ? "file" : "person";
  }

  /**
   * @return the person's name; null for a file, or if the name was erased
   */
  String name(UUID person) {
    return Optional.ofNullable(person).flatMap(people::nameOf).orElse(null);
  }
}
