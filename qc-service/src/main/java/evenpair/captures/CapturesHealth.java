package evenpair.captures;

import evenpair.web.DataFolder;
import java.nio.file.Files;
import java.nio.file.Path;
import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.stereotype.Component;

/** Down if nothing can be kept: a disk that was mounted again for reading only, a lost share. */
@Component("captures")
class CapturesHealth implements HealthIndicator {
  private final Path root;

  CapturesHealth(DataFolder data) {
    this.root = data.folder("captures");
  }

  @Override
  public Health health() {
    boolean usable = Files.isDirectory(root) && Files.isWritable(root);
    return (usable ? Health.up() : Health.down())
        .withDetail("store", usable ? "can be written" : "cannot be written: " + root)
        .build();
  }
}
