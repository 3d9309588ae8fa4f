/** Pure: descriptive statistics, quantiles and proportions. Knows nothing about sound. */
@ApplicationModule(allowedDependencies = {})
package evenpair.statistics;

import org.springframework.modulith.ApplicationModule;
