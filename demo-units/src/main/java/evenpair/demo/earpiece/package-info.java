/**
 * Simulated earpieces: drivers as filtered branches behind crossovers, an ear canal with its length
 * mode, leaks, spread from unit to unit, and known faults. Every number in here is invented for the
 * demo; none describes a product.
 */
package evenpair.demo.earpiece;
