package evenpair.ledger;

import evenpair.web.Refusal;
import java.io.PrintStream;
import java.util.List;
import java.util.Optional;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.boot.ExitCodeGenerator;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.stereotype.Component;

/**
 * The check as a command: {@code --evenpair.check-ledger} ({@code =12:3f9a…} with a head that was
 * written down). Prints what was found and ends the process: 0 if everything holds, 1 if something
 * does not, 2 if the head given is none.
 */
@Component
@ConditionalOnProperty("evenpair.check-ledger")
class CheckCommand implements ApplicationRunner, ExitCodeGenerator {
  private final LedgerCheck check;
  private final PrintStream out;
  private final String option;
  private int exitCode = 1;

  @Autowired
  CheckCommand(LedgerCheck check, @Value("${evenpair.check-ledger}") String option) {
    this(check, option, System.out);
  }

  CheckCommand(LedgerCheck check, String option, PrintStream out) {
    this.check = check;
    this.option = option;
    this.out = out;
  }

  @Override
  public void run(ApplicationArguments arguments) {
    try {
      LedgerCheck.Report report = check.check(head());
      lines(report).forEach(out::println);
      exitCode = report.intact() ? 0 : 1;
    } catch (Refusal e) {
      out.println(e.getMessage());
      exitCode = 2;
    }
  }

  private Optional<PrintedHead> head() {
    return option.contains(":") ? Optional.of(PrintedHead.parse(option)) : Optional.empty();
  }

  private static List<String> lines(LedgerCheck.Report report) {
    return List.of(
        report.intact()
            ? "The seal holds."
            : "The seal is broken: " + report.firstFailure().problem() + ".",
        "Walked: %d blocks, %d entries, %d rows, %d files; %d heads outside the database; %d entries wait for a block."
            .formatted(
                report.blocks(),
                report.entries(),
                report.rows(),
                report.files(),
                report.witnessedHeads(),
                report.waiting()),
        report.entriesWithoutEvidence() == 0
            ? "Every entry seals its rows and files."
            : report.entriesWithoutEvidence()
                + " entries were sealed before rows and files were sealed with them.",
        "Newest head, to be kept elsewhere: " + report.head(),
        report.note());
  }

  @Override
  public int getExitCode() {
    return exitCode;
  }
}
