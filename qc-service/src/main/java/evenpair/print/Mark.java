package evenpair.print;

/** Shapes that go with a verdict's word, so that neither colour nor language alone carries it. */
public enum Mark {
  /** A filled disc with a tick. */
  PASS
}
