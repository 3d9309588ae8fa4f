package evenpair.web;

import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.info.Info;
import io.swagger.v3.oas.models.info.License;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Head of the description at {@code /v3/api-docs}. */
@Configuration(proxyBeanMethods = false)
class ApiDescription {
  @Bean
  OpenAPI openApi(Software software) {
    return new OpenAPI()
        .info(
            new Info()
                .title("Evenpair")
                .version(software.version())
                .description(
                    "Judges pairs of earpieces from their captures. Refusals are RFC 9457 problem documents; frequencies are Hz,"
                        + " levels dB SPL (re 20 µPa), deviations dB, times ISO 8601 in UTC.")
                .license(
                    new License()
                        .name("Apache-2.0")
                        .url("https://www.apache.org/licenses/LICENSE-2.0")));
  }
}
