/** People, roles and station tokens. Names and badges live here only. */
@ApplicationModule(allowedDependencies = {"web"})
package evenpair.access;

import org.springframework.modulith.ApplicationModule;
