package evenpair.demo.screens;

import evenpair.EvenpairApplication;
import evenpair.access.Accounts;
import evenpair.demo.line.DemoBatch;
import evenpair.demo.player.Crew;
import evenpair.demo.player.LineClient;
import evenpair.demo.player.Player;
import evenpair.inspections.Inspections;
import evenpair.ledger.Ledger;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.boot.SpringApplication;
import org.springframework.context.ConfigurableApplicationContext;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * The real service on a folder of its own, with a few units of the demo line judged: good ones and
 * one with a dead tweeter.
 */
final class RunningService implements AutoCloseable {
  /** Of {@link DemoBatch#sedge()}: three good pairs and the fourth, whose right tweeter is dead. */
  private static final int[] PLAYED = {1, 2, 3, 4};

  /** A dead lower tweeter (left), kept for the test that watches it arrive. */
  private static final int LATE = 28;

  static final String BATCH = DemoBatch.sedge().name();
  static final String GOOD_UNIT = DemoBatch.sedge().units().get(0).serial();
  static final String BAD_UNIT = DemoBatch.sedge().units().get(3).serial();
  static final String LATE_UNIT = DemoBatch.sedge().units().get(LATE - 1).serial();

  private final ConfigurableApplicationContext service;
  private final Path folder;
  private final Crew crew;
  private final Player player;
  private final Path captures;

  private RunningService(ConfigurableApplicationContext service, Path folder) {
    this.service = service;
    this.folder = folder;
    Path demo = folder.resolve("demo");
    this.crew = Crew.hire(service.getBean(Accounts.class), address(), demo);
    this.player = new Player(crew, demo, Clock.systemUTC(), quiet());
    player.play(List.of(DemoBatch.sedge().only(PLAYED)));
    this.captures = player.leaveCaptures(DemoBatch.spare());
  }

  static RunningService start() {
    try {
      Path folder = Files.createTempDirectory("evenpair-screens");
      return new RunningService(
          SpringApplication.run(
              EvenpairApplication.class, "--server.port=0", "--evenpair.data=" + folder),
          folder);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  URI address() {
    return URI.create(
        "http://localhost:" + service.getEnvironment().getRequiredProperty("local.server.port"));
  }

  /** Sends JSON as the engineer, for what a test needs there before it looks at a screen. */
  JsonNode send(String method, String path, String json) {
    Map<String, Object> body =
        JsonMapper.builder().build().readValue(json, new TypeReference<>() {});
    LineClient engineer = crew.person(Crew.ENGINEER);
    return method.equals("PUT") ? engineer.put(path, body) : engineer.post(path, body);
  }

  /** Who works there. */
  Crew crew() {
    return crew;
  }

  /**
   * @param place in the demo batch, 1 upwards
   */
  static String unit(int place) {
    return DemoBatch.sedge().units().get(place - 1).serial();
  }

  /** Measures one more unit of the demo batch. */
  void measure(int place) {
    player.play(List.of(DemoBatch.sedge().only(place)));
  }

  /** Measures one more unit, as the line does while somebody looks at the screen of its bench. */
  void measureTheLateUnit() {
    player.play(List.of(DemoBatch.sedge().only(LATE)));
  }

  /**
   * @param place 1 upwards @return serial of a unit that nobody has judged; the first is good, the
   *     second has a dead tweeter
   */
  static String spareUnit(int place) {
    return DemoBatch.spare().units().get(place - 1).serial();
  }

  /**
   * @return the recording of a spare unit with the plain cable
   */
  Path capture(int place, String side) {
    return captures.resolve(spareUnit(place)).resolve("plain-" + side + ".wav");
  }

  /**
   * @return the code on the certificate of the unit's first inspection, once it is sealed
   */
  String recordCode(String serial) {
    UUID inspection = service.getBean(Inspections.class).ofUnit(serial).get(0).id();
    Ledger ledger = service.getBean(Ledger.class);
    Optional<Ledger.Seal> seal = ledger.sealOf("inspection-closed", inspection);
    while (seal.isEmpty()) {
      Thread.onSpinWait();
      seal = ledger.sealOf("inspection-closed", inspection);
    }
    return seal.get().code();
  }

  @Override
  public void close() {
    service.close();
    try (Stream<Path> files = Files.walk(folder)) {
      files.sorted(Comparator.reverseOrder()).map(Path::toFile).forEach(java.io.File::delete);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static PrintStream quiet() {
    return new PrintStream(OutputStream.nullOutputStream(), true, StandardCharsets.UTF_8);
  }
}
