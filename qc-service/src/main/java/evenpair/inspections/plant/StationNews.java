package evenpair.inspections.plant;

/** Tells live screens. */
public interface StationNews {
  /** A station has told something of itself. To be called in the transaction that stores it. */
  void station(String station);
}
