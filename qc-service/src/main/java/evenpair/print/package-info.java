/** Paper: fonts, the vector plot, the JasperReports engine. */
@ApplicationModule(allowedDependencies = {"acoustics", "tolerance", "web"})
package evenpair.print;

import org.springframework.modulith.ApplicationModule;
