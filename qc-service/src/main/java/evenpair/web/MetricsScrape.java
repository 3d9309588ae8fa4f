package evenpair.web;

import jakarta.servlet.http.HttpServletRequest;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.web.SecurityFilterChain;

/**
 * Lets the plant's monitoring read the metrics, and nothing else, by a token of its own. Without
 * the setting {@code evenpair.metrics.token} there is no such token, and only those may read them
 * who may by themselves.
 */
@Configuration(proxyBeanMethods = false)
class MetricsScrape {
  static final String PATH = "/actuator/prometheus";

  private static final int SHORTEST = 24;
  private static final String SCHEME = "Bearer ";

  private final byte[] token;

  MetricsScrape(@Value("${evenpair.metrics.token:}") String token) {
    if (!token.isEmpty() && token.length() < SHORTEST) {
      throw new StartRefused(
          "evenpair.metrics.token has " + token.length() + " characters; it can be guessed.",
          "Give it " + SHORTEST + " random characters or more, or leave it out.");
    }
    this.token = token.getBytes(StandardCharsets.UTF_8);
  }

  @Bean
  @Order(1)
  SecurityFilterChain scrape(HttpSecurity http) {
    return http.securityMatcher(this::isScrape)
        .authorizeHttpRequests(requests -> requests.anyRequest().permitAll())
        .sessionManagement(
            session -> session.sessionCreationPolicy(SessionCreationPolicy.STATELESS))
        .csrf(AbstractHttpConfigurer::disable)
        .requestCache(AbstractHttpConfigurer::disable)
        .build();
  }

  /** Any other request, one with a wrong token too, goes the way of all others. */
  private boolean isScrape(HttpServletRequest request) {
    String sent = request.getHeader(HttpHeaders.AUTHORIZATION);
    return token.length > 0
        && request.getMethod().equals("GET")
        && request.getRequestURI().equals(request.getContextPath() + PATH)
        && sent != null
        && sent.startsWith(SCHEME)
        && MessageDigest.isEqual(
            token, sent.substring(SCHEME.length()).strip().getBytes(StandardCharsets.UTF_8));
  }
}
