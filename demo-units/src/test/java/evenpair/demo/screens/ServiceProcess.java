package evenpair.demo.screens;

import evenpair.EvenpairApplication;
import evenpair.access.Accounts;
import evenpair.demo.line.DemoBatch;
import evenpair.demo.player.Crew;
import evenpair.demo.player.Player;
import java.io.OutputStream;
import java.io.PrintStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import org.springframework.boot.SpringApplication;

/**
 * The service as a process of its own, that a test may kill: with one station, nothing calibrated,
 * and the captures of four pairs left as files. A second start goes on with what it has.
 */
final class ServiceProcess {
  static final String STATION = "bench-1";
  static final DemoBatch PAIRS = DemoBatch.sedge().only(1, 3, 5, 8);

  /** Written once everything is there. */
  static final String READY = "ready";

  private ServiceProcess() {}

  /**
   * @param args port and data folder
   */
  public static void main(String[] args) throws Exception {
    Path data = Path.of(args[1]);
    Accounts accounts =
        SpringApplication.run(
                EvenpairApplication.class, "--server.port=" + args[0], "--evenpair.data=" + data)
            .getBean(Accounts.class);
    Path demo = data.resolve("demo");
    Crew crew = Crew.hire(accounts, URI.create("http://localhost:" + args[0]), demo);
    if (!Files.exists(demo.resolve(PAIRS.name()))) {
      crew.person(Crew.ENGINEER).put("/api/stations/" + STATION, Map.of());
      crew.bench(STATION).get("/api/products");
      PrintStream quiet =
          new PrintStream(OutputStream.nullOutputStream(), true, StandardCharsets.UTF_8);
      new Player(crew, demo, Clock.systemUTC(), quiet).leaveCaptures(PAIRS);
    }
    Files.writeString(data.resolve(READY), "");
  }
}
