/** Where the service listens, and how it is kept from being overheard. */
package evenpair.web.tls;
