/**
 * The screens in a real browser against the running service, and the pure functions of their
 * modules.
 */
package evenpair.demo.screens;
