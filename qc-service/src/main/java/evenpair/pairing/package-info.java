/** Regrouping of loose earpieces into matched pairs. */
@ApplicationModule(allowedDependencies = {"tolerance", "products", "inspections", "access", "web"})
package evenpair.pairing;

import org.springframework.modulith.ApplicationModule;
