package propcap.files.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads files that have nothing to do with each other, and reports the faults of all at once. */
public final class SeveralFiles {
  private final List<Fault> faults = new ArrayList<>();

  /** What reads a file. */
  @FunctionalInterface
  public interface Reading<T> {
    T read() throws FaultsException;
  }

  /** What a file holds; empty where it has faults, which {@link #check} then tells. */
  public <T> Optional<T> read(Reading<T> reading) {
    try {
      return Optional.of(reading.read());
    } catch (FaultsException e) {
      faults.addAll(e.faults());
      return Optional.empty();
    }
  }

  /**
   * To be called once all are read.
   *
   * @throws FaultsException with the faults of all files, if there is any
   */
  public void check() throws FaultsException {
    if (!faults.isEmpty()) {
      throw new FaultsException(faults);
    }
  }
}
