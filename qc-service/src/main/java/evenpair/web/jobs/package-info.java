/**
 * Long work: started with 202, done in steps by any process, gone on with after a crash. Open to
 * every module.
 */
package evenpair.web.jobs;
