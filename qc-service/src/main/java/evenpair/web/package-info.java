/** Shared by every module: problem documents, paging, texts, security set-up, identifiers. */
@ApplicationModule(allowedDependencies = {})
package evenpair.web;

import org.springframework.modulith.ApplicationModule;
