/** Batches: yield, reasons and curve statistics. */
@ApplicationModule(
    allowedDependencies = {
      "acoustics",
      "statistics",
      "tolerance",
      "products",
      "stations",
      "inspections",
      "access",
      "print",
      "web"
    })
package evenpair.batches;

import org.springframework.modulith.ApplicationModule;
