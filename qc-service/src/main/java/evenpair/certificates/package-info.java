/** Certificates, labels and slips; batch printing; the public check of a certificate. */
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
