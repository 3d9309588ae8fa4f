/** What the lower module must not name. */
@ApplicationModule
package violations.modules.upper;

import org.springframework.modulith.ApplicationModule;
