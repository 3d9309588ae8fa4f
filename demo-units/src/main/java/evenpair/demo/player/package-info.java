/**
 * Plays the simulated line through the HTTP API, as any rig could: nothing in here uses the
 * service's classes except to read the stimulus' WAV.
 */
package evenpair.demo.player;
