package evenpair.inspections;

import java.util.Locale;

/** Where an inspection stands; only an open one may change. */
enum InspectionState {
  OPEN,
  CLOSED,
  /** Ended without a verdict, by a person or a time-out; the reason is stored. */
  ABANDONED;

  String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
