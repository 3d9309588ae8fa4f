package evenpair.web.tls;

import java.io.IOException;
import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.util.Collections;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

/** Names and addresses of this machine. */
final class OwnNames {
  private OwnNames() {}

  /**
   * @return its host name and, where it has a domain, the short one; none that is an address
   */
  static Set<String> ofThisMachine() {
    Set<String> names = new TreeSet<>();
    try {
      String whole = InetAddress.getLocalHost().getHostName().toLowerCase(Locale.ROOT);
      if (whole.matches("[a-z0-9-]+(\\.[a-z0-9-]+)*") && !whole.matches("[0-9.]+")) {
        names.add(whole);
        names.add(whole.split("\\.")[0]);
      }
    } catch (IOException e) {
      // A machine without a name is reached by address, or by evenpair.host-names.
    }
    return names;
  }

  /**
   * @param listening address that is listened on; blank or a wildcard for all
   * @return the addresses under which it can be reached, without zones
   */
  static Set<String> addresses(String listening) {
    Set<String> addresses = new TreeSet<>();
    try {
      InetAddress one = listening.isBlank() ? null : InetAddress.getByName(listening.strip());
      if (one != null && !one.isAnyLocalAddress()) {
        addresses.add(plain(one));
        return addresses;
      }
      for (NetworkInterface network : Collections.list(NetworkInterface.getNetworkInterfaces())) {
        for (InetAddress address : Collections.list(network.getInetAddresses())) {
          if (!address.isLinkLocalAddress()) {
            addresses.add(plain(address));
          }
        }
      }
    } catch (IOException e) {
      // Listening on it will fail with a better message.
    }
    return addresses;
  }

  /**
   * @return an address of the sixth version as it is listed here: without brackets, in full
   */
  static String plain(String host) {
    String bare =
        host.startsWith("[") && host.endsWith("]") ? host.substring(1, host.length() - 1) : host;
    if (bare.indexOf(':') < 0) {
      return bare;
    }
    try {
      return plain(InetAddress.getByName(bare));
    } catch (IOException e) {
      return bare;
    }
  }

  private static String plain(InetAddress address) {
    String text = address.getHostAddress();
    return address instanceof Inet6Address ? text.replaceFirst("%.*", "") : text;
  }
}
