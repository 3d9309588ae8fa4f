package evenpair.captures;

import evenpair.web.ProblemDocuments;
import evenpair.web.Refusal;
import java.util.Locale;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestControllerAdvice;

/** Problem documents for what goes wrong with captures, whoever asked for them. */
@RestControllerAdvice
@Order(Ordered.HIGHEST_PRECEDENCE)
class CaptureProblems {
  private static final Logger LOG = LoggerFactory.getLogger(CaptureProblems.class);

  private final ProblemDocuments documents;

  CaptureProblems(ProblemDocuments documents) {
    this.documents = documents;
  }

  /**
   * A controller that knows which part it was throws a {@link Refusal} of its own that names it.
   */
  @ExceptionHandler
  ResponseEntity<Object> unreadable(UnreadableCapture e, Locale locale) {
    Refusal refusal =
        new Refusal(400, "unreadable-capture", e.getMessage()).with("expected", e.expected());
    return documents.answer(
        e.place().isEmpty() ? refusal : refusal.with("place", e.place()), locale);
  }

  @ExceptionHandler
  ResponseEntity<Object> full(StorageFailure e, Locale locale) {
    LOG.error("A capture was refused: {}", e.getMessage(), e);
    return documents.answer(new Refusal(507, "storage-failed", e.getMessage()), locale);
  }
}
