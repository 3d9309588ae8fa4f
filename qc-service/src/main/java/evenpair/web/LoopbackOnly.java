package evenpair.web;

import java.net.InetAddress;
import java.net.UnknownHostException;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/** Until people and roles exist, nobody but this machine may connect. */
@Component
class LoopbackOnly {
  LoopbackOnly(
      @Value("${server.address:}") String address,
      @Value("${management.server.address:${server.address:}}") String management) {
    check("server.address", address);
    check("management.server.address", management);
  }

  private static void check(String setting, String address) {
    if (!isLoopback(address)) {
      throw new StartRefused(
          "%s is \"%s\": other machines could connect, and there are no people and roles yet that would tell who may do what."
              .formatted(setting, address),
          "Leave "
              + setting
              + " at 127.0.0.1, and reach the service from another machine through a tunnel that knows its users.");
    }
  }

  private static boolean isLoopback(String address) {
    try {
      return !address.isBlank() && InetAddress.getByName(address.strip()).isLoopbackAddress();
    } catch (UnknownHostException e) {
      return false;
    }
  }
}
