/**
 * Pure: grid, curve, sweep, deconvolution, biquads and ear-simulator facts. Knows nothing about
 * files, SQL or the web.
 */
@ApplicationModule(allowedDependencies = {})
package evenpair.acoustics;

import org.springframework.modulith.ApplicationModule;
