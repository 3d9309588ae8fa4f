package evenpair.access;

import evenpair.web.Cookies;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.security.config.Customizer;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.web.authentication.AnonymousAuthenticationFilter;
import org.springframework.session.web.http.CookieSerializer;
import org.springframework.session.web.http.DefaultCookieSerializer;

@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(AccessSettings.class)
class AccessConfiguration {
  /** Adds to the one security chain; see the module {@code web}. */
  @Bean
  @Order(0)
  Customizer<HttpSecurity> whoCalls(
      StationTokens tokens, Sessions sessions, AccountStore accounts) {
    return http ->
        http.addFilterBefore(
            new CallerFilter(tokens, sessions, accounts), AnonymousAuthenticationFilter.class);
  }

  /** Secure by itself wherever the request came over TLS. */
  @Bean
  CookieSerializer sessionCookie() {
    DefaultCookieSerializer cookie = new DefaultCookieSerializer();
    cookie.setCookieName(Cookies.SESSION);
    cookie.setCookiePath("/");
    cookie.setUseHttpOnlyCookie(true);
    cookie.setSameSite("Strict");
    return cookie;
  }
}
