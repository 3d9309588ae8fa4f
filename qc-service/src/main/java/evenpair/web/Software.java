package evenpair.web;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.info.BuildProperties;
import org.springframework.stereotype.Component;

/** Which software this is; its version stands in every record and on every paper. */
@Component
public class Software {
  private final String version;

  Software(ObjectProvider<BuildProperties> build) {
    BuildProperties properties = build.getIfAvailable();
    this.version = properties == null ? "unbuilt" : properties.getVersion();
  }

  /**
   * @return the version that the build gave it, such as 0.1.0; {@code unbuilt} when it runs from an
   *     editor
   */
  public String version() {
    return version;
  }
}
