package evenpair.traceability.outside;

/** What a comparison of two measurements of one pair comes to. */
public enum Outcome {
  /** |E_n| within its bound everywhere where the uncertainties leave something to tell. */
  AGREES,
  /** |E_n| beyond its bound in one region at least. */
  DISAGREES,
  /** The uncertainties together exceed the match limit itself: agreement would say nothing. */
  CANNOT_TELL,
  /** Nothing to compare in the region, or only an average of both channels is known. */
  NOT_COMPARED
}
