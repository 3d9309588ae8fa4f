/** Reads WAV and curve files, stores captures by their digest, turns a capture into a response. */
@ApplicationModule(allowedDependencies = {"acoustics", "web"})
package evenpair.captures;

import org.springframework.modulith.ApplicationModule;
