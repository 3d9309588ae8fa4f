package evenpair.inspections.dropfolder;

import evenpair.web.Refusal;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.UUID;

/** Where a set of files goes: the very ingest that HTTP requests go through. */
public interface Ingest {
  /**
   * Judges and records one set. The same content again gets the first answer, however often and by
   * whichever process it is sent.
   *
   * @param inspection the JSON of the part {@code inspection}
   * @param files the other parts
   * @param writtenAt when the files were last written: the time of measurement where the JSON says
   *     none
   * @param locale for the sentences of the answer
   * @throws Refusal if it can never be taken as it is; nothing was stored
   * @throws NotNow if it may well be taken later; it may have been stored, and the same content
   *     then gets that answer
   */
  Taken take(byte[] inspection, List<Part> files, Instant writtenAt, Locale locale) throws NotNow;

  /**
   * One file of a set.
   *
   * @param name the part it stands for, such as {@code left}
   * @param curve true: a finished response curve; false: a WAV recording
   */
  record Part(String name, boolean curve, byte[] bytes) {}

  /**
   * @param replay true: equal content had been taken before
   * @param json the record, as HTTP answers it
   */
  record Taken(UUID inspection, boolean replay, String json) {}

  /** The service cannot take it at the moment; the message says why. */
  final class NotNow extends Exception {
    public NotNow(String message, Throwable cause) {
      super(message, cause);
    }
  }
}
