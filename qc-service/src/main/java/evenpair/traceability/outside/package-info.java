/** The comparison with an outside report: pure, no Spring, no database. */
package evenpair.traceability.outside;
