package evenpair.products;

import evenpair.products.VersionRows.SignOff;
import evenpair.web.Refusal;
import java.time.Instant;
import java.util.UUID;
import org.springframework.stereotype.Component;

/** Who may sign what, and from when a signed version may hold; alike for both kinds of version. */
@Component
class SignOffRules {
  private final SignedVersions signed;

  SignOffRules(SignedVersions signed) {
    this.signed = signed;
  }

  /**
   * @param from null for now
   * @return the first instant
   * @throws Refusal 409 if it is a draft, 422 if that time has passed
   */
  Instant begin(SignOff signOff, Instant from) {
    if (signOff == null) {
      throw new Refusal(
          409,
          "not-approved",
          "This version is a draft: only an approved version can be activated.");
    }
    Instant now = signed.now();
    if (from != null && from.isBefore(now)) {
      throw new Refusal(
              422,
              "time-has-passed",
              "A version cannot hold from " + from + " on: it is " + now + " now.")
          .with("field", "from")
          .with("expected", "a time that has not passed, or none for now");
    }
    return from == null ? now : from;
  }

  /**
   * @throws Refusal 409 if it is signed already
   */
  static void requireDraft(SignOff signOff) {
    if (signOff != null) {
      throw new Refusal(
          409, "already-approved", "This version was approved at " + signOff.at() + ".");
    }
  }

  /**
   * @param approver the reference of the person who signs
   * @return the same
   * @throws Refusal 409 if that is the author
   */
  static UUID approver(UUID author, UUID approver) {
    if (approver.equals(author)) {
      throw new Refusal(
              409,
              "approver-is-author",
              "An author cannot approve what they drafted: another engineer must.")
          .with("field", "approver")
          .with("expected", "someone other than the author");
    }
    return approver;
  }
}
