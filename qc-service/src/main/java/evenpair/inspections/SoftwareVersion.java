package evenpair.inspections;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.info.BuildProperties;
import org.springframework.stereotype.Component;

/** Which software judged: stands in every record. */
@Component
class SoftwareVersion {
  private final String version;

  SoftwareVersion(ObjectProvider<BuildProperties> build) {
    BuildProperties properties = build.getIfAvailable();
    this.version = properties == null ? "unreleased" : properties.getVersion();
  }

  String get() {
    return version;
  }
}
