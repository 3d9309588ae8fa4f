package evenpair.demo.player;

import evenpair.access.Accounts;
import evenpair.web.Caller;
import evenpair.web.DurableFiles;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * Who works at the demo line: an engineer who also measures, another who signs off, an
 * administrator, and a token for each bench. Passwords and tokens lie in {@code sign-in.json} of
 * the demo's folder, readable by its owner only; another run goes on with them.
 */
public final class Crew {
  /** Sets the benches up; also measures. */
  public static final String ENGINEER = "qe-1";

  /** Signs off what the other one drafted. */
  public static final String SECOND_ENGINEER = "qe-2";

  /** Measures and no more. */
  public static final String OPERATOR = "op-11";

  /** Looks after people and stations' tokens. */
  public static final String ADMINISTRATOR = "admin-1";

  private static final Map<String, Set<Caller>> ROLES =
      Map.of(
          ENGINEER, Set.of(Caller.OPERATOR, Caller.ENGINEER),
          SECOND_ENGINEER, Set.of(Caller.ENGINEER),
          OPERATOR, Set.of(Caller.OPERATOR),
          ADMINISTRATOR, Set.of(Caller.ADMINISTRATOR));
  private static final String TOKEN = "token of ";

  private final JsonMapper json =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();
  private final URI base;
  private final Path file;
  private final Map<String, String> secrets = new LinkedHashMap<>();
  private final Map<String, LineClient> clients = new LinkedHashMap<>();

  private Crew(URI base, Path folder) {
    this.base = base;
    this.file = folder.resolve("sign-in.json");
  }

  /**
   * @param accounts of the service that runs in this process
   * @param folder such as {@code <evenpair.data>/demo}
   */
  public static Crew hire(Accounts accounts, URI base, Path folder) {
    Crew crew = new Crew(base, folder);
    crew.read();
    ROLES.forEach(
        (name, roles) ->
            accounts.open(name, crew.secrets.computeIfAbsent(name, person -> secret()), roles));
    crew.write();
    return crew;
  }

  /**
   * @return what that person signs in with
   */
  public String password(String person) {
    return secrets.get(person);
  }

  /**
   * @return a client of that person, who signs in when it is first used
   */
  public synchronized LineClient person(String person) {
    return clients.computeIfAbsent(
        person, name -> LineClient.ofPerson(base, name, secrets.get(name)));
  }

  /**
   * @return a client with the token of that bench, which must be known to the service
   */
  public synchronized LineClient bench(String bench) {
    LineClient known = clients.get(TOKEN + bench);
    if (known == null) {
      known = LineClient.ofStation(base, token(bench));
      clients.put(TOKEN + bench, known);
    }
    return known;
  }

  private String token(String bench) {
    String known = secrets.get(TOKEN + bench);
    if (known == null) {
      known =
          person(ADMINISTRATOR)
              .post("/api/stations/" + bench + "/tokens", Map.of("name", "demo line"))
              .path("token")
              .asString();
      secrets.put(TOKEN + bench, known);
      write();
    }
    return known;
  }

  /** Where the service is. */
  URI base() {
    return base;
  }

  private static String secret() {
    byte[] bytes = new byte[12];
    new SecureRandom().nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }

  private void read() {
    try {
      Files.createDirectories(file.getParent());
      if (Files.exists(file)) {
        secrets.putAll(
            json.readValue(Files.readString(file), new TypeReference<Map<String, String>>() {}));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void write() {
    try {
      DurableFiles.writePrivate(
          file, (json.writeValueAsString(secrets) + "\n").getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
