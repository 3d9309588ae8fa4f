package evenpair.inspections;

import evenpair.captures.CaptureStore;
import evenpair.captures.StorageFailure;
import java.io.IOException;
import java.io.InputStream;
import java.util.concurrent.atomic.AtomicInteger;

/** The real store with a disk that fills up when told to. */
final class SwitchableStore implements CaptureStore {
  private final CaptureStore real;
  private final AtomicInteger writesLeft = new AtomicInteger(Integer.MAX_VALUE);

  SwitchableStore(CaptureStore real) {
    this.real = real;
  }

  /**
   * @param writes how many captures still fit before the disk is full
   */
  void fillUpAfter(int writes) {
    writesLeft.set(writes);
  }

  void freeSpace() {
    writesLeft.set(Integer.MAX_VALUE);
  }

  @Override
  public String keep(byte[] bytes) {
    if (writesLeft.getAndDecrement() <= 0) {
      throw new StorageFailure(
          "No space left in the capture folder; free some.",
          new IOException("No space left on device"));
    }
    return real.keep(bytes);
  }

  @Override
  public InputStream open(String sha256) throws IOException {
    return real.open(sha256);
  }

  @Override
  public boolean has(String sha256) {
    return real.has(sha256);
  }
}
