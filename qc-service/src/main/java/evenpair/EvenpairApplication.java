package evenpair;

import java.util.Arrays;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.modulith.Modulithic;
import org.springframework.scheduling.annotation.EnableScheduling;

/** The service of one plant: judges pairs, keeps the proof, prints certificates. */
@SpringBootApplication
@EnableScheduling
@Modulithic(systemName = "Evenpair", sharedModules = "web")
public class EvenpairApplication {

  public static void main(String[] args) {
    SpringApplication application = new SpringApplication(EvenpairApplication.class);
    boolean command =
        Arrays.stream(args).anyMatch(arg -> arg.startsWith("--evenpair.check-ledger"));
    if (command) {
      // nothing listens, and the process ends when the command has
      application.setWebApplicationType(WebApplicationType.NONE);
      System.exit(SpringApplication.exit(application.run(args)));
    } else {
      application.run(args);
    }
  }
}
