/** Products, tunings, golden responses and limit sets as immutable versions. */
@ApplicationModule(allowedDependencies = {"acoustics", "tolerance", "access", "ledger", "web"})
package evenpair.products;

import org.springframework.modulith.ApplicationModule;
