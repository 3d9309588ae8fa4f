/**
 * The demo: simulated earpieces, a line that plays them through the HTTP API, and the launcher that
 * starts both.
 */
package evenpair.demo;
