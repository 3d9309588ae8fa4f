package evenpair.captures;

/**
 * The capture store could not keep what it was given; the message says which folder and what to do.
 */
public class StorageFailure extends RuntimeException {
  public StorageFailure(String message, Throwable cause) {
    super(message, cause);
  }
}
