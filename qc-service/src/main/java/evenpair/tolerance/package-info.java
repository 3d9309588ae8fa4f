/** Pure: golden response, windows, regions, limit set, and the judging of a measured pair. */
@ApplicationModule(allowedDependencies = {"acoustics", "statistics"})
package evenpair.tolerance;

import org.springframework.modulith.ApplicationModule;
