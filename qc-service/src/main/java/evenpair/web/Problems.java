package evenpair.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.validation.ConstraintViolationException;
import java.io.EOFException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.catalina.connector.ClientAbortException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.http.converter.HttpMessageNotReadableException;
import org.springframework.validation.FieldError;
import org.springframework.web.ErrorResponse;
import org.springframework.web.HttpMediaTypeNotAcceptableException;
import org.springframework.web.HttpMediaTypeNotSupportedException;
import org.springframework.web.HttpRequestMethodNotSupportedException;
import org.springframework.web.bind.MethodArgumentNotValidException;
import org.springframework.web.bind.MissingServletRequestParameterException;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.context.request.async.AsyncRequestNotUsableException;
import org.springframework.web.context.request.async.AsyncRequestTimeoutException;
import org.springframework.web.method.annotation.HandlerMethodValidationException;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.multipart.MaxUploadSizeExceededException;
import org.springframework.web.multipart.MultipartException;
import org.springframework.web.multipart.support.MissingServletRequestPartException;
import org.springframework.web.servlet.NoHandlerFoundException;
import org.springframework.web.servlet.resource.NoResourceFoundException;
import tools.jackson.core.JacksonException;

/**
 * Every refusal leaves the service as a problem document that names the field or part and what
 * would be right.
 */
@RestControllerAdvice
@Order(Ordered.LOWEST_PRECEDENCE)
class Problems {
  private static final Logger LOG = LoggerFactory.getLogger(Problems.class);

  private final ProblemDocuments documents;
  private final Ids ids;
  private final long captureMaxBytes;

  Problems(
      ProblemDocuments documents,
      Ids ids,
      @Value("${evenpair.capture-max-bytes}") long captureMaxBytes) {
    this.documents = documents;
    this.ids = ids;
    this.captureMaxBytes = captureMaxBytes;
  }

  @ExceptionHandler
  ResponseEntity<Object> refused(Refusal refusal, Locale locale) {
    return documents.answer(refusal, locale);
  }

  @ExceptionHandler
  ResponseEntity<Object> unreadable(HttpMessageNotReadableException e, Locale locale) {
    if (e.getCause() instanceof JacksonException json) {
      return documents.answer(JsonProblems.of(json), locale);
    }
    if (isClientGone(e)) {
      return null;
    }
    return documents.answer(
        new Refusal(400, "unreadable-json", "The request needs a body of JSON."), locale);
  }

  @ExceptionHandler
  ResponseEntity<Object> invalid(MethodArgumentNotValidException e, Locale locale) {
    List<Map<String, String>> problems =
        e.getBindingResult().getAllErrors().stream()
            .map(
                error ->
                    problem(
                        error instanceof FieldError field ? field.getField() : "",
                        error.getDefaultMessage()))
            .toList();
    return documents.answer(invalidFields(problems), locale);
  }

  @ExceptionHandler
  ResponseEntity<Object> invalid(HandlerMethodValidationException e, Locale locale) {
    List<Map<String, String>> problems =
        e.getParameterValidationResults().stream()
            .flatMap(
                result ->
                    result.getResolvableErrors().stream()
                        .map(
                            error ->
                                problem(
                                    error instanceof FieldError field
                                        ? field.getField()
                                        : result.getMethodParameter().getParameterName(),
                                    error.getDefaultMessage())))
            .toList();
    return documents.answer(invalidFields(problems), locale);
  }

  @ExceptionHandler
  ResponseEntity<Object> invalid(ConstraintViolationException e, Locale locale) {
    List<Map<String, String>> problems =
        e.getConstraintViolations().stream()
            .map(
                violation ->
                    problem(violation.getPropertyPath().toString(), violation.getMessage()))
            .toList();
    return documents.answer(invalidFields(problems), locale);
  }

  @ExceptionHandler
  ResponseEntity<Object> missing(MissingServletRequestPartException e, Locale locale) {
    String part = e.getRequestPartName();
    return documents.answer(
        new Refusal(400, "missing-part", "The upload needs a part named \"" + part + "\".")
            .with("part", part),
        locale);
  }

  @ExceptionHandler
  ResponseEntity<Object> missing(MissingServletRequestParameterException e, Locale locale) {
    String name = e.getParameterName();
    return documents.answer(
        new Refusal(400, "missing-parameter", "The address needs the parameter \"" + name + "\".")
            .with("field", name),
        locale);
  }

  @ExceptionHandler
  ResponseEntity<Object> mismatch(MethodArgumentTypeMismatchException e, Locale locale) {
    Class<?> type = e.getRequiredType();
    String expected = type == null ? "of another kind" : JsonProblems.typeName(type);
    Refusal refusal =
        new Refusal(400, "invalid-parameter", "\"" + e.getName() + "\" must be " + expected + ".")
            .with("field", e.getName())
            .with("expected", expected);
    return documents.answer(refusal, locale);
  }

  @ExceptionHandler
  ResponseEntity<Object> tooLarge(MaxUploadSizeExceededException e, Locale locale) {
    String detail =
        "A file of an upload may have %d bytes at most (setting evenpair.capture-max-bytes), all of them together %d."
            .formatted(captureMaxBytes, UploadSetup.largestRequest(captureMaxBytes));
    Refusal refusal =
        new Refusal(413, "upload-too-large", detail)
            .with("expected", "at most " + captureMaxBytes + " bytes a file")
            .with("setting", "evenpair.capture-max-bytes");
    return documents.answer(refusal, locale);
  }

  @ExceptionHandler
  ResponseEntity<Object> broken(MultipartException e, HttpServletRequest request, Locale locale) {
    if (isClientGone(e)) {
      LOG.info(
          "A client hung up in the middle of {} {}; nothing was stored",
          request.getMethod(),
          request.getRequestURI());
    }
    return documents.answer(
        new Refusal(
            400,
            "broken-upload",
            "The upload is not complete multipart/form-data; send it again, nothing was stored."),
        locale);
  }

  @ExceptionHandler
  ResponseEntity<Object> unsupported(HttpMediaTypeNotSupportedException e, Locale locale) {
    List<String> right = e.getSupportedMediaTypes().stream().map(MediaType::toString).toList();
    String detail =
        "The content type "
            + e.getContentType()
            + " is not taken here; send "
            + String.join(" or ", right)
            + ".";
    return documents.answer(
        new Refusal(415, "unsupported-content-type", detail).with("choices", right), locale);
  }

  @ExceptionHandler
  ResponseEntity<Object> notAcceptable(HttpMediaTypeNotAcceptableException e, Locale locale) {
    List<String> right = e.getSupportedMediaTypes().stream().map(MediaType::toString).toList();
    String detail =
        "This cannot be had in the form that was asked for, only as "
            + String.join(" or ", right)
            + ".";
    return documents.answer(
        new Refusal(406, "not-acceptable", detail).with("choices", right), locale);
  }

  @ExceptionHandler({NoResourceFoundException.class, NoHandlerFoundException.class})
  ResponseEntity<Object> notFound(HttpServletRequest request, Locale locale) {
    return documents.answer(
        new Refusal(404, "not-found", "There is nothing at " + request.getRequestURI() + "."),
        locale);
  }

  @ExceptionHandler
  ResponseEntity<Object> wrongMethod(
      HttpRequestMethodNotSupportedException e, HttpServletRequest request, Locale locale) {
    List<String> right =
        e.getSupportedMethods() == null ? List.of() : List.of(e.getSupportedMethods());
    String detail =
        e.getMethod()
            + " does nothing at "
            + request.getRequestURI()
            + "; "
            + String.join(", ", right)
            + " does.";
    return documents.answer(
        new Refusal(405, "method-not-allowed", detail).with("choices", right),
        locale,
        e.getHeaders());
  }

  /** The client has gone, or a live stream ran its time: nobody is there to read an answer. */
  @ExceptionHandler({
    AsyncRequestNotUsableException.class,
    ClientAbortException.class,
    AsyncRequestTimeoutException.class
  })
  void gone(HttpServletRequest request) {
    LOG.debug("The client of {} {} has gone", request.getMethod(), request.getRequestURI());
  }

  @ExceptionHandler
  ResponseEntity<Object> unexpected(Exception e, HttpServletRequest request, Locale locale) {
    if (isClientGone(e)) {
      gone(request);
      return null;
    }
    if (e instanceof ErrorResponse known && known.getStatusCode().is4xxClientError()) {
      String detail = known.getBody().getDetail();
      Refusal refusal =
          new Refusal(
              known.getStatusCode().value(),
              "bad-request",
              detail == null ? e.getMessage() : detail);
      return documents.answer(refusal, locale, known.getHeaders());
    }
    String incident = ids.next().toString();
    LOG.error(
        "Incident {}: {} {} failed", incident, request.getMethod(), request.getRequestURI(), e);
    return documents.answer(incident(incident), locale, HttpHeaders.EMPTY);
  }

  static Refusal incident(String incident) {
    return new Refusal(
            500,
            "internal-error",
            "Something went wrong here, not with the request. The log names the cause under "
                + incident
                + ".")
        .with("incident", incident);
  }

  private static Map<String, String> problem(String field, String detail) {
    return Map.of(
        "field", field == null ? "" : field, "detail", detail == null ? "is not right" : detail);
  }

  private static Refusal invalidFields(List<Map<String, String>> problems) {
    String detail =
        String.join(
                "; ",
                problems.stream()
                    .map(p -> "\"" + p.get("field") + "\" " + p.get("detail"))
                    .toList())
            + ".";
    Refusal refusal = new Refusal(400, "invalid-field", detail).with("problems", problems);
    return problems.isEmpty() ? refusal : refusal.with("field", problems.get(0).get("field"));
  }

  private static boolean isClientGone(Throwable e) {
    for (Throwable cause = e; cause != null; cause = cause.getCause()) {
      if (cause instanceof ClientAbortException || cause instanceof EOFException) {
        return true;
      }
    }
    return false;
  }
}
