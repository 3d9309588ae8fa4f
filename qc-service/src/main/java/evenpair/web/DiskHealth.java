package evenpair.web;

import java.io.UncheckedIOException;
import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.stereotype.Component;

/** Warns in time before the data folder's disk is full. */
@Component("disk")
class DiskHealth implements HealthIndicator {
  private final DataDisk disk;

  DiskHealth(DataDisk disk) {
    this.disk = disk;
  }

  @Override
  public Health health() {
    try {
      DataDisk.Space space = disk.space();
      Health.Builder health = space.low() ? Health.status("WARNING") : Health.up();
      return health
          .withDetail("freeBytes", space.freeBytes())
          .withDetail("totalBytes", space.totalBytes())
          .withDetail("warnBelowBytes", space.warnBelowBytes())
          .build();
    } catch (UncheckedIOException e) {
      return Health.down(e).build();
    }
  }
}
