package evenpair.stations;

/**
 * Which measurement of a gauge study.
 *
 * @param part from 0, by its place in the plan
 * @param appraiser from 0, by its place in the plan
 * @param seating from 1
 */
record GaugePlace(int part, int appraiser, int seating) {}
