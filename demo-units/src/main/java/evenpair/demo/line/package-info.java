/**
 * The simulated line: benches with their microphones, output gains and background noise, the cables
 * with their digital filters, and the recorder that renders what a bench's microphones would have
 * captured. Knows nothing about HTTP.
 */
package evenpair.demo.line;
