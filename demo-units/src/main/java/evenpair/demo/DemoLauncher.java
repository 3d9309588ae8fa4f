package evenpair.demo;

import evenpair.EvenpairApplication;
import evenpair.access.Accounts;
import evenpair.demo.line.Bench;
import evenpair.demo.line.DemoBatch;
import evenpair.demo.player.Crew;
import evenpair.demo.player.EarlierDays;
import evenpair.demo.player.LineClient;
import evenpair.demo.player.LineStopped;
import evenpair.demo.player.Player;
import evenpair.demo.player.Summary;
import java.io.PrintStream;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import org.springframework.boot.SpringApplication;
import org.springframework.context.ConfigurableApplicationContext;

/**
 * Starts the service and plays the demo line against it in the same JVM; goes on serving until it
 * is stopped. Arguments go to the service; {@code --demo.exit} ends after the summary, with exit
 * code 1 if a unit did not come to what it should.
 */
public final class DemoLauncher {
  private static final String EXIT = "--demo.exit";
  private static final String BENCHES = "--demo.benches=";
  private static final Duration PATIENCE = Duration.ofMinutes(2);

  private DemoLauncher() {}

  /**
   * @param args the service's arguments, such as {@code --server.port=8081}, and {@code
   *     --demo.exit}
   */
  public static void main(String[] args) {
    boolean exit = Arrays.asList(args).contains(EXIT);
    ConfigurableApplicationContext service =
        SpringApplication.run(
            EvenpairApplication.class,
            Arrays.stream(args).filter(a -> !a.startsWith("--demo.")).toArray(String[]::new));
    URI base =
        URI.create(
            "http://localhost:"
                + service.getEnvironment().getRequiredProperty("local.server.port"));
    Path folder =
        Path.of(service.getEnvironment().getRequiredProperty("evenpair.data")).resolve("demo");
    int code =
        play(service.getBean(Accounts.class), base, folder, PATIENCE, System.out, benches(args));
    if (exit || code != 0) {
      System.exit(SpringApplication.exit(service, () -> code));
    }
    System.out.println(
        "The service goes on until you stop it (Ctrl-C). A second run goes on with what it has.");
  }

  private static int benches(String... args) {
    return Arrays.stream(args)
        .filter(a -> a.startsWith(BENCHES))
        .map(a -> Integer.parseInt(a.substring(BENCHES.length())))
        .findFirst()
        .orElse(Bench.LINE.size());
  }

  /**
   * @return 0, or 1 if the line stopped or a unit did not come to what it should
   */
  static int play(
      Accounts accounts, URI base, Path folder, Duration patience, PrintStream out, int benches) {
    try {
      new LineClient(base).awaitHealth(patience);
      Crew crew = Crew.hire(accounts, base, folder);
      boolean lotAsItShould =
          new EarlierDays(crew, folder, Clock.systemUTC(), out).play(DemoBatch.lotChange());
      Player player = new Player(crew, folder, Clock.systemUTC(), out, benches);
      Summary summary = player.play(List.of(DemoBatch.sedge(), DemoBatch.reed()));
      Path spare = player.leaveCaptures(DemoBatch.spare());
      invite(base, summary, folder, spare, out);
      introduce(crew, out);
      return summary.asItShould() && lotAsItShould ? 0 : 1;
    } catch (LineStopped e) {
      out.println();
      out.println("The demo line stopped: " + e.getMessage());
      return 1;
    }
  }

  private static void introduce(Crew crew, PrintStream out) {
    out.println();
    out.println("Sign in as (name, password; demo only)");
    for (String person :
        List.of(Crew.ENGINEER, Crew.SECOND_ENGINEER, Crew.OPERATOR, Crew.ADMINISTRATOR)) {
      out.printf("  %-10s %s%n", person, crew.password(person));
    }
  }

  private static void invite(URI base, Summary summary, Path folder, Path spare, PrintStream out) {
    Summary.Samples samples = summary.samples();
    out.println();
    out.println("Open in a browser");
    out.println("  Bench        " + base + "/#/bench/bench-1");
    out.println(
        "  Batch        "
            + base
            + "/#/batch/"
            + samples.batch()
            + "?product="
            + samples.product()
            + "&tuning=plain");
    out.println(
        "  Lot change   " + base + "/#/batch/" + DemoBatch.lotChange().name() + "?tuning=plain");
    samples
        .failedUnit()
        .ifPresent(serial -> out.println("  Unit         " + base + "/#/unit/" + serial));
    samples
        .passedInspection()
        .ifPresent(
            id ->
                out.println("  Certificate  " + base + "/api/inspections/" + id + "/certificate"));
    out.println("The truth about each unit lies in " + folder);
    out.println(
        "To try the Bench screen by hand: captures of three pairs that nobody has judged lie in "
            + spare);
  }
}
