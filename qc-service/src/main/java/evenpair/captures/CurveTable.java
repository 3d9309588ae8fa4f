package evenpair.captures;

import java.util.Optional;

/**
 * The numbers of a curve file as written.
 *
 * @param hz two frequencies at least, strictly rising
 * @param db one level for each
 * @param phaseDeg one phase for each, if the file has them
 */
record CurveTable(double[] hz, double[] db, Optional<double[]> phaseDeg) {}
