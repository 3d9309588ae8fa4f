/** A unit's story and the answer to an outside report. */
@ApplicationModule(
    allowedDependencies = {
      "acoustics",
      "statistics",
      "tolerance",
      "access",
      "ledger",
      "captures",
      "print",
      "products",
      "stations",
      "inspections",
      "batches",
      "pairing",
      "certificates",
      "web"
    })
package evenpair.traceability;

import org.springframework.modulith.ApplicationModule;
