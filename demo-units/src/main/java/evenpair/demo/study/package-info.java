/**
 * Long runs of the simulator against the service's own rules, without a service: how often a rule
 * is right, with the truth known.
 */
package evenpair.demo.study;
