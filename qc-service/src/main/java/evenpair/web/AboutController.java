package evenpair.web;

import org.springframework.beans.factory.annotation.Value;
import org.springframework.core.env.Environment;
import org.springframework.util.StringUtils;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/** What is running here. */
@RestController
@AllowedFor(Caller.ANYONE)
class AboutController {
  private final Software software;
  private final Environment environment;
  private final String address;

  AboutController(
      Software software, Environment environment, @Value("${server.address}") String address) {
    this.software = software;
    this.environment = environment;
    this.address = address;
  }

  @GetMapping("/api/about")
  About about() {
    boolean external = StringUtils.hasText(environment.getProperty("spring.datasource.url"));
    String listening = address + ":" + environment.getProperty("local.server.port", "");
    return new About("Evenpair", software.version(), listening, external ? "external" : "embedded");
  }

  /**
   * @param listening address and port
   * @param database {@code embedded} in the data folder, or {@code external}: the plant's own
   */
  record About(String name, String version, String listening, String database) {}
}
