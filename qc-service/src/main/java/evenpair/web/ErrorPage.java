package evenpair.web;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;
import java.util.Locale;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.webmvc.error.ErrorController;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** The problem document for whatever goes wrong before a request reaches a controller. */
@RestController
@AllowedFor(Caller.ANYONE)
class ErrorPage implements ErrorController {
  private static final Logger LOG = LoggerFactory.getLogger(ErrorPage.class);

  private final ProblemDocuments documents;
  private final Ids ids;

  ErrorPage(ProblemDocuments documents, Ids ids) {
    this.documents = documents;
    this.ids = ids;
  }

  @RequestMapping("/error")
  ResponseEntity<Object> error(HttpServletRequest request, Locale locale) {
    Object code = request.getAttribute(RequestDispatcher.ERROR_STATUS_CODE);
    int status = code instanceof Integer number ? number : 404;
    if (status == 404) {
      return documents.answer(
          new Refusal(404, "not-found", "There is nothing at this address."), locale);
    }
    if (status < 500) {
      return documents.answer(
          new Refusal(status, "bad-request", "The request cannot be understood."), locale);
    }
    String incident = ids.next().toString();
    Object cause = request.getAttribute(RequestDispatcher.ERROR_EXCEPTION);
    LOG.error(
        "Incident {}: {} failed",
        incident,
        request.getAttribute(RequestDispatcher.ERROR_REQUEST_URI),
        (Throwable) cause);
    return documents.answer(Problems.incident(incident), locale);
  }
}
