package evenpair.demo.screens;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * On a class of browser tests that only ask pure functions of the screens' modules: all of them
 * share one page, which is opened once.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@interface OnePage {}
