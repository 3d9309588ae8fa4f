package evenpair.ledger;

import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import java.util.Optional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** The ledger over HTTP. */
@RestController
@AllowedFor({Caller.ENGINEER, Caller.ADMINISTRATOR})
class LedgerController {
  private final LedgerCheck check;

  LedgerController(LedgerCheck check) {
    this.check = check;
  }

  /**
   * Walks the whole seal; the answer names the first fault, if there is one.
   *
   * @param head a head that was printed or written down, such as {@code 12:3f9a0c11d2e45b67}
   */
  @GetMapping("/api/ledger/check")
  LedgerCheck.Report check(@RequestParam(required = false) String head) {
    return check.check(Optional.ofNullable(head).map(PrintedHead::parse));
  }
}
