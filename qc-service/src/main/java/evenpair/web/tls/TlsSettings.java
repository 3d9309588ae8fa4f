package evenpair.web.tls;

import evenpair.web.StartRefused;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import org.springframework.util.StringUtils;

/**
 * How connections are kept private: {@code evenpair.tls} is {@code none} (the default) or {@code
 * self-signed}; a certificate of the plant's own is given by {@code server.ssl.*} and needs
 * neither. {@code evenpair.host-names} lists the names by which other machines reach this one.
 */
@Component
public class TlsSettings {
  private static final List<String> OWN =
      List.of("server.ssl.bundle", "server.ssl.key-store", "server.ssl.certificate");

  private final boolean selfSigned;
  private final boolean own;
  private final List<String> hostNames;
  private final Set<String> answersTo = new TreeSet<>();

  TlsSettings(Environment environment) {
    String mode = environment.getProperty("evenpair.tls", "none");
    if (!mode.equals("none") && !mode.equals("self-signed")) {
      throw new StartRefused(
          "evenpair.tls is \"" + mode + "\".",
          "Set it to none or self-signed, or give a certificate of your own by server.ssl.*.");
    }
    own =
        OWN.stream().anyMatch(name -> StringUtils.hasText(environment.getProperty(name)))
            && environment.getProperty("server.ssl.enabled", Boolean.class, true);
    selfSigned = mode.equals("self-signed") && !own;
    String names = environment.getProperty("evenpair.host-names", "");
    hostNames = List.of(StringUtils.tokenizeToStringArray(names.toLowerCase(Locale.ROOT), ", "));
    String address = environment.getProperty("server.address", "");
    answersTo.addAll(hostNames);
    if (!ListeningRule.isLoopback(address)) {
      answersTo.addAll(OwnNames.ofThisMachine());
      answersTo.addAll(OwnNames.addresses(address));
    }
  }

  /** Whether a certificate is to be made here. */
  boolean selfSigned() {
    return selfSigned;
  }

  /** Whether connections are encrypted at all. */
  boolean encrypted() {
    return selfSigned || own;
  }

  /**
   * @param host of a request, in lower case
   * @return whether other machines may reach this one by it
   */
  public boolean answersTo(String host) {
    return answersTo.contains(OwnNames.plain(host));
  }

  /**
   * @return names by which other machines reach this one, in lower case
   */
  List<String> hostNames() {
    return hostNames;
  }
}
