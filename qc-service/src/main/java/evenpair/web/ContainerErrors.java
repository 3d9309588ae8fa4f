package evenpair.web;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.core.StandardHost;
import org.apache.catalina.valves.ErrorReportValve;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.tomcat.ConfigurableTomcatWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.MediaType;

/**
 * Requests that are so wrong that the container turns them away by itself get a problem document
 * too, not a page of HTML.
 */
@Configuration(proxyBeanMethods = false)
class ContainerErrors {
  @Bean
  WebServerFactoryCustomizer<ConfigurableTomcatWebServerFactory> problemsFromTheContainer() {
    return factory ->
        factory.addContextCustomizers(
            context ->
                ((StandardHost) context.getParent())
                    .setErrorReportValveClass(ProblemValve.class.getName()));
  }

  /** Made by the container, by name. */
  public static final class ProblemValve extends ErrorReportValve {
    private static final Logger LOG = LoggerFactory.getLogger(ProblemValve.class);

    @Override
    protected void report(Request request, Response response, Throwable failure) {
      int status = response.getStatus();
      if (status < 400 || response.getContentWritten() > 0 || !response.setErrorReported()) {
        return;
      }
      String type = status < 500 ? "bad-request" : "internal-error";
      String title = status < 500 ? "Request not understood" : "Failure inside the service";
      String document =
          "{\"type\":\"/problems/%s\",\"title\":\"%s\",\"status\":%d,\"detail\":\"%s.\"}"
              .formatted(type, title, status, title);
      try {
        response.setContentType(MediaType.APPLICATION_PROBLEM_JSON_VALUE);
        response.getOutputStream().write(document.getBytes(StandardCharsets.UTF_8));
        response.finishResponse();
      } catch (IOException e) {
        LOG.debug("The client has gone", e);
      }
    }
  }
}
