package evenpair.ledger;

import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/** The ledger over HTTP. */
@RestController
@AllowedFor({Caller.ENGINEER, Caller.ADMINISTRATOR})
class LedgerController {
  private final LedgerCheck check;

  LedgerController(LedgerCheck check) {
    this.check = check;
  }

  /** Walks the whole seal; the answer names the first fault, if there is one. */
  @GetMapping("/api/ledger/check")
  LedgerCheck.Report check() {
    return check.check();
  }
}
