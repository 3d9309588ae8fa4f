package evenpair.web;

import java.util.Collection;
import java.util.List;
import java.util.TreeSet;
import tools.jackson.core.JacksonException;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.exc.StreamConstraintsException;
import tools.jackson.databind.DatabindException;
import tools.jackson.databind.exc.InvalidFormatException;
import tools.jackson.databind.exc.MismatchedInputException;
import tools.jackson.databind.exc.UnrecognizedPropertyException;

/**
 * Says in plain words what is wrong with JSON that was sent: which field, where, and what would be
 * right.
 */
final class JsonProblems {
  private JsonProblems() {}

  static Refusal of(JacksonException problem) {
    Refusal refusal = refusal(problem);
    TokenStreamLocation at = problem.getLocation();
    if (at != null && at.getLineNr() > 0) {
      refusal.with("place", "line " + at.getLineNr() + ", column " + at.getColumnNr());
    }
    return refusal;
  }

  private static Refusal refusal(JacksonException problem) {
    if (problem instanceof UnrecognizedPropertyException unknown) {
      return unknown(unknown);
    }
    if (problem instanceof MismatchedInputException mismatch) {
      return mismatch(mismatch);
    }
    if (problem instanceof DatabindException) {
      String field = field(problem);
      String why = refusedValue(problem);
      return new Refusal(
              400, "invalid-field", "The field \"" + field + "\" is not right: " + why + ".")
          .with("field", field);
    }
    if (problem instanceof StreamConstraintsException) {
      return new Refusal(400, "unreadable-json", "The JSON is too large or nested too deeply.");
    }
    return new Refusal(
        400,
        "unreadable-json",
        "This is not JSON: " + firstSentence(problem.getOriginalMessage()) + ".");
  }

  private static Refusal unknown(UnrecognizedPropertyException unknown) {
    String field = field(unknown);
    Refusal refusal =
        new Refusal(400, "unknown-field", "There is no field \"" + field + "\" here.")
            .with("field", field);
    Collection<Object> known = unknown.getKnownPropertyIds();
    if (known != null && !known.isEmpty()) {
      TreeSet<String> names = new TreeSet<>();
      known.forEach(name -> names.add(String.valueOf(name)));
      refusal.with("choices", List.copyOf(names));
    }
    return refusal;
  }

  private static Refusal mismatch(MismatchedInputException mismatch) {
    String field = field(mismatch);
    String expected = typeName(mismatch.getTargetType());
    String subject = field.isEmpty() ? "The JSON" : "The field \"" + field + "\"";
    String found =
        mismatch instanceof InvalidFormatException format
            ? ", not \"" + shortened(format.getValue()) + "\""
            : "";
    Refusal refusal =
        new Refusal(400, "invalid-field", subject + " must be " + expected + found + ".")
            .with("expected", expected);
    return field.isEmpty() ? refusal : refusal.with("field", field);
  }

  private static String field(JacksonException problem) {
    StringBuilder path = new StringBuilder();
    for (JacksonException.Reference step : problem.getPath()) {
      if (step.getPropertyName() == null) {
        path.append('[').append(step.getIndex()).append(']');
      } else {
        path.append(path.isEmpty() ? "" : ".").append(step.getPropertyName());
      }
    }
    return path.toString();
  }

  private static String refusedValue(JacksonException problem) {
    Throwable cause = problem.getCause();
    String message = cause == null ? problem.getOriginalMessage() : cause.getMessage();
    return message == null ? "it was refused" : firstSentence(message);
  }

  static String typeName(Class<?> type) {
    if (type == null) {
      return "of another kind";
    }
    if (type == String.class) {
      return "a text";
    }
    if (type == boolean.class || type == Boolean.class) {
      return "true or false";
    }
    if (type == int.class || type == Integer.class || type == long.class || type == Long.class) {
      return "a whole number";
    }
    if (type == double.class
        || type == Double.class
        || type == float.class
        || type == Float.class) {
      return "a finite number";
    }
    if (type == java.time.Instant.class) {
      return "a time such as 2026-11-25T07:00:00Z";
    }
    if (type == java.util.UUID.class) {
      return "a UUID";
    }
    if (type.isEnum()) {
      return "one of " + List.of(type.getEnumConstants());
    }
    return type.isArray() || Collection.class.isAssignableFrom(type) ? "a list" : "an object";
  }

  /** Later sentences of the parser's messages speak of its own classes. */
  private static String firstSentence(String message) {
    String line = message.lines().findFirst().orElse("");
    int end = line.indexOf(": was expecting");
    String first = end > 0 ? line.substring(0, end) : line;
    return first.endsWith(".") ? first.substring(0, first.length() - 1) : first;
  }

  private static String shortened(Object value) {
    String text = String.valueOf(value);
    return text.length() <= 80 ? text : text.substring(0, 80) + "…";
  }
}
