/**
 * Folders that are watched for other rigs' files. Folders are listed again and again: the
 * notifications that an operating system has for its own disks say nothing of what another machine
 * writes to a network share, and a listing every other second costs next to nothing.
 */
package evenpair.inspections.dropfolder;
