/** The PostgreSQL that the service brings along, and the roles it works as. */
package evenpair.web.database;
