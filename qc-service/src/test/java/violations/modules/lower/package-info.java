/** Breaks the rule on purpose: a lower module that names an upper one. */
@ApplicationModule(allowedDependencies = {})
package violations.modules.lower;

import org.springframework.modulith.ApplicationModule;
