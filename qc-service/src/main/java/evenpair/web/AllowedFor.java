package evenpair.web;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Who may call an endpoint. Every handler method carries it, or its controller does for all of
 * them; the method's own counts before the controller's. A handler without it is closed to
 * everyone.
 */
@Target({ElementType.TYPE, ElementType.METHOD})
@Retention(RetentionPolicy.RUNTIME)
public @interface AllowedFor {
  Caller[] value();
}
