/** The printed certificate. */
@ApplicationModule(
    allowedDependencies = {
      "products",
      "stations",
      "inspections",
      "access",
      "ledger",
      "print",
      "web"
    })
package evenpair.certificates;

import org.springframework.modulith.ApplicationModule;
