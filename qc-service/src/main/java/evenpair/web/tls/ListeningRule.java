package evenpair.web.tls;

import evenpair.web.StartRefused;
import java.net.InetAddress;
import java.net.UnknownHostException;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/**
 * Other machines may connect over TLS only: passwords and tokens would be overheard, and browsers
 * give a microphone to secure pages alone. This machine may connect without; browsers take that for
 * secure.
 */
@Component
class ListeningRule {
  ListeningRule(
      TlsSettings tls,
      @Value("${server.address:}") String address,
      @Value("${management.server.port:}") String managementPort,
      @Value("${management.server.address:${server.address:}}") String managementAddress,
      @Value("${management.server.ssl.enabled:false}") boolean managementEncrypted) {
    check("server.address", address, tls.encrypted());
    if (!managementPort.isBlank()) {
      check("management.server.address", managementAddress, managementEncrypted);
    }
  }

  static void check(String setting, String address, boolean encrypted) {
    if (!encrypted && !isLoopback(address)) {
      throw new StartRefused(
          "%s is \"%s\": other machines could connect, and without TLS anybody between could read passwords and tokens."
              .formatted(setting, address),
          "Set evenpair.tls=self-signed, or give a certificate of your own by server.ssl.*; or leave "
              + setting
              + " at 127.0.0.1.");
    }
  }

  static boolean isLoopback(String address) {
    try {
      return !address.isBlank() && InetAddress.getByName(address.strip()).isLoopbackAddress();
    } catch (UnknownHostException e) {
      return false;
    }
  }
}
