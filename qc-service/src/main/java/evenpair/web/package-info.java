/**
 * Shared by every module: problem documents, paging, texts, security set-up, identifiers, long work
 * ({@code jobs}). Open: what other modules must not use is package-private.
 */
@ApplicationModule(
    type = ApplicationModule.Type.OPEN,
    allowedDependencies = {})
package evenpair.web;

import org.springframework.modulith.ApplicationModule;
