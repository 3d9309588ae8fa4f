/** Stations: ear simulators, calibration of both ends, left/right correction. */
@ApplicationModule(
    allowedDependencies = {
      "acoustics",
      "statistics",
      "tolerance",
      "captures",
      "products",
      "access",
      "ledger",
      "web"
    })
package evenpair.stations;

import org.springframework.modulith.ApplicationModule;
