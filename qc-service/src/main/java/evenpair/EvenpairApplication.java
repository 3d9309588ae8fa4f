package evenpair;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.modulith.Modulithic;
import org.springframework.scheduling.annotation.EnableScheduling;

/** The service of one plant: judges pairs, keeps the proof, prints certificates. */
@SpringBootApplication
@EnableScheduling
@Modulithic(systemName = "Evenpair", sharedModules = "web")
public class EvenpairApplication {

  public static void main(String[] args) {
    SpringApplication.run(EvenpairApplication.class, args);
  }
}
