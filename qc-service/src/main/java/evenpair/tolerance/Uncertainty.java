package evenpair.tolerance;

import evenpair.acoustics.Curve;

/**
 * Standard uncertainties (k = 1) of a measured pair, in dB.
 *
 * @param levelDb of a single earpiece's aligned deviation from golden, at the grid points
 * @param matchDb of left − right, at the grid points
 * @param offsetDb of a_c, one earpiece's level against golden
 * @param balanceDb of a_L − a_R
 */
public record Uncertainty(Curve levelDb, Curve matchDb, double offsetDb, double balanceDb) {}
