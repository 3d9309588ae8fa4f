/** Inspections: ingest of captures, attempts, verdicts, the record. */
@ApplicationModule(
    allowedDependencies = {
      "acoustics",
      "statistics",
      "tolerance",
      "captures",
      "products",
      "stations",
      "access",
      "ledger",
      "web"
    })
package evenpair.inspections;

import org.springframework.modulith.ApplicationModule;
