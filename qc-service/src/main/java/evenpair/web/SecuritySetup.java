package evenpair.web;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.config.annotation.web.configurers.HeadersConfigurer;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.context.NullSecurityContextRepository;
import org.springframework.security.web.header.writers.CrossOriginOpenerPolicyHeaderWriter.CrossOriginOpenerPolicy;
import org.springframework.security.web.header.writers.CrossOriginResourcePolicyHeaderWriter.CrossOriginResourcePolicy;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;

/**
 * Closed unless said otherwise: {@link AllowedForManager} asks the handler whom it is for. Who
 * calls is found out anew with every request by the module {@code access}, which adds its filter to
 * this chain; no session is made by being looked for.
 */
@Configuration(proxyBeanMethods = false)
class SecuritySetup {
  static final String CONTENT_SECURITY_POLICY =
      String.join(
          "; ",
          "default-src 'self'",
          "script-src 'self'",
          "style-src 'self'",
          "img-src 'self' data:",
          "connect-src 'self'",
          "worker-src 'self'",
          "manifest-src 'self'",
          "object-src 'none'",
          "base-uri 'none'",
          "frame-ancestors 'none'",
          "form-action 'self'");

  @Bean
  SecurityFilterChain security(HttpSecurity http, AllowedForManager allowed, Unallowed unallowed) {
    ForgeryProtection forgery = new ForgeryProtection();
    return http.authorizeHttpRequests(requests -> requests.anyRequest().access(allowed))
        .exceptionHandling(
            answers -> answers.authenticationEntryPoint(unallowed).accessDeniedHandler(unallowed))
        .securityContext(
            context -> context.securityContextRepository(new NullSecurityContextRepository()))
        // Signing in begins a session under a new id by itself. Left on, every request would be
        // taken
        // for a sign-in and get another id, and requests that a page makes at once would lose
        // theirs.
        .sessionManagement(AbstractHttpConfigurer::disable)
        .csrf(
            csrf ->
                csrf.csrfTokenRepository(ForgeryProtection.repository())
                    .csrfTokenRequestHandler(forgery)
                    .requireCsrfProtectionMatcher(forgery))
        .formLogin(AbstractHttpConfigurer::disable)
        .httpBasic(AbstractHttpConfigurer::disable)
        .logout(AbstractHttpConfigurer::disable)
        .requestCache(AbstractHttpConfigurer::disable)
        .headers(SecuritySetup::headers)
        .build();
  }

  private static void headers(HeadersConfigurer<HttpSecurity> headers) {
    headers
        .contentSecurityPolicy(policy -> policy.policyDirectives(CONTENT_SECURITY_POLICY))
        .frameOptions(HeadersConfigurer.FrameOptionsConfig::deny)
        .referrerPolicy(policy -> policy.policy(ReferrerPolicy.NO_REFERRER))
        .permissionsPolicyHeader(
            policy -> policy.policy("camera=(), geolocation=(), microphone=(self)"))
        .crossOriginOpenerPolicy(policy -> policy.policy(CrossOriginOpenerPolicy.SAME_ORIGIN))
        .crossOriginResourcePolicy(policy -> policy.policy(CrossOriginResourcePolicy.SAME_ORIGIN));
  }
}
