/** The append-only ledger of sealed entries: append, seal into blocks, check. */
@ApplicationModule(allowedDependencies = {"web"})
package evenpair.ledger;

import org.springframework.modulith.ApplicationModule;
