package evenpair.inspections;

import evenpair.EvenpairDatabaseTest;
import java.lang.annotation.ElementType;
import java.lang.annotation.Inherited;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.TestInstance;
import org.springframework.context.annotation.Import;

/**
 * The whole service with the fixture's products; all such classes share one context, each uses
 * stations and serials of its own.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@Inherited
@EvenpairDatabaseTest(properties = "test.own=inspections")
@Import(FixtureSeams.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@interface InspectionTest {}
