package evenpair.inspections;

import java.util.Optional;

/** Both channels of one seating as decoded, and the idle recordings beside them. */
record SentPair(SentChannel left, SentChannel right, Optional<SentFile> idleLeft, Optional<SentFile> idleRight) {}
