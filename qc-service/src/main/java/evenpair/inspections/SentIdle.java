package evenpair.inspections;

import evenpair.acoustics.Samples;

/** A recording of one channel while nothing plays. */
record SentIdle(SentFile file, Samples samples) {}
