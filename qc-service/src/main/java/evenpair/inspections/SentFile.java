package evenpair.inspections;

import evenpair.ledger.Digests;

/**
 * One file part of a request.
 *
 * @param part its name, such as {@code left}
 * @param curve true: a finished response curve; false: a WAV recording
 */
record SentFile(String part, boolean curve, byte[] bytes, String sha256) {
  static SentFile of(String part, boolean curve, byte[] bytes) {
    return new SentFile(part, curve, bytes, Digests.of(bytes));
  }
}
