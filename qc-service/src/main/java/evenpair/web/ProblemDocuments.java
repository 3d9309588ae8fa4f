package evenpair.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/**
 * Turns refusals into RFC 9457 problem documents. The title is the text {@code problem.<type>}, or
 * the type's own words.
 */
@Component
public class ProblemDocuments {
  private final Texts texts;
  private final JsonMapper json;

  ProblemDocuments(Texts texts, JsonMapper json) {
    this.texts = texts;
    this.json = json;
  }

  /**
   * @return the document for a refusal, titled in the reader's language
   */
  public ProblemDetail of(Refusal refusal, Locale locale) {
    ProblemDetail problem = ProblemDetail.forStatus(refusal.status());
    problem.setType(URI.create("/problems/" + refusal.type()));
    problem.setTitle(title(refusal.type(), locale));
    problem.setDetail(refusal.getMessage());
    refusal.members().forEach(problem::setProperty);
    return problem;
  }

  /**
   * @return the document as an answer, whatever media type the client asked for: it must learn why
   */
  public ResponseEntity<Object> answer(Refusal refusal, Locale locale) {
    HttpHeaders headers = new HttpHeaders();
    if (refusal.retryAfterSeconds() != null) {
      headers.set(HttpHeaders.RETRY_AFTER, refusal.retryAfterSeconds().toString());
    }
    return answer(refusal, locale, headers);
  }

  ResponseEntity<Object> answer(Refusal refusal, Locale locale, HttpHeaders headers) {
    return ResponseEntity.status(refusal.status())
        .headers(headers)
        .contentType(MediaType.APPLICATION_PROBLEM_JSON)
        .body(of(refusal, locale));
  }

  /** Writes the document straight to a response, for filters, which stand before any controller. */
  void write(Refusal refusal, Locale locale, HttpServletResponse response) throws IOException {
    byte[] body = json.writeValueAsString(of(refusal, locale)).getBytes(StandardCharsets.UTF_8);
    response.setStatus(refusal.status());
    response.setContentType(MediaType.APPLICATION_PROBLEM_JSON_VALUE);
    response.setContentLength(body.length);
    if (refusal.retryAfterSeconds() != null) {
      response.setHeader(HttpHeaders.RETRY_AFTER, refusal.retryAfterSeconds().toString());
    }
    response.getOutputStream().write(body);
  }

  private String title(String type, Locale locale) {
    String title = texts.table(locale).get("problem." + type);
    if (title != null) {
      return title;
    }
    String words = type.replace('-', ' ');
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }
}
