package evenpair.certificates;

import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.HexFormat;

/** Whom an address stands for. */
final class CallerAddress {
  /** An IPv6 caller commonly has a whole /64 network (RFC 6177 and common practice). */
  private static final int NETWORK_BYTES = 8;

  private CallerAddress() {}

  /**
   * @param address a literal IP address
   * @return an IPv4 address as it is, of an IPv6 address its network; anything else as it is
   */
  static String of(String address) {
    try {
      // A literal is never looked up: only digits, points, colons and a zone may pass.
      if (address.contains(":") && InetAddress.getByName(address) instanceof Inet6Address six) {
        return HexFormat.of().formatHex(Arrays.copyOf(six.getAddress(), NETWORK_BYTES));
      }
    } catch (UnknownHostException e) {
      return address;
    }
    return address;
  }
}
