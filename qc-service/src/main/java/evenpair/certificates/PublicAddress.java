package evenpair.certificates;

import evenpair.web.StartRefused;
import java.net.URI;
import java.util.Optional;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/**
 * Where the public reaches this service ({@code evenpair.public-url}), if it does: codes on paper
 * then lead to the page that checks them.
 */
@Component
class PublicAddress {
  private static final String SETTING = "evenpair.public-url";

  private final Optional<String> base;

  /**
   * @param url https (or http) address without query or fragment; empty: the service is not public
   */
  PublicAddress(@Value("${" + SETTING + ":}") String url) {
    base = url.isBlank() ? Optional.empty() : Optional.of(checked(url.strip()));
  }

  private static String checked(String url) {
    URI address;
    try {
      address = URI.create(url);
    } catch (IllegalArgumentException e) {
      throw refused(url, e);
    }
    boolean web = "https".equals(address.getScheme()) || "http".equals(address.getScheme());
    if (!web
        || address.getHost() == null
        || address.getRawQuery() != null
        || address.getRawFragment() != null
        || address.getRawUserInfo() != null) {
      throw refused(url, null);
    }
    return url.endsWith("/") ? url.substring(0, url.length() - 1) : url;
  }

  private static StartRefused refused(String url, Exception cause) {
    return new StartRefused(
        SETTING + " is \"" + url + "\", which is no web address.",
        "Give it as https://quality.example.com, or leave it out: then codes on paper carry the signed summary.",
        cause);
  }

  /**
   * @return whether the public reaches this service
   */
  boolean isPublic() {
    return base.isPresent();
  }

  /**
   * @return the address of the page where a code is typed in; empty if the service is not public
   */
  Optional<String> checkPage() {
    return base.map(address -> address + "/check");
  }

  /**
   * @param code a record code, with or without hyphens
   * @return the address of the page that checks it; empty if the service is not public
   */
  Optional<String> pageOf(String code) {
    return base.map(address -> address + "/check/" + code.replace("-", ""));
  }
}
