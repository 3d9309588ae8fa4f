package evenpair.demo.screens;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.extension.ExtendWith;

/**
 * A class whose tests take a {@link Screen}. Where there is no browser they are skipped, counted,
 * and the mend is printed; with {@code CI=true} they fail. A test fails on any console error,
 * script error or breach of the content-security policy that it has not announced.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@ExtendWith(BrowserExtension.class)
@interface BrowserTest {}
