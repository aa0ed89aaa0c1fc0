package propcap.web.request;

import java.util.List;
import propcap.disk.CannotWriteException;

/** A request that is not carried out; nothing was changed. The message says why. */
public final class RefusedException extends Exception {
  private static final long serialVersionUID = 1;

  private final int status;
  private final List<String> readings;

  /**
   * Refuses.
   *
   * @param status as HTTP counts them, such as 400
   */
  public RefusedException(int status, String message) {
    this(status, message, List.of());
  }

  private RefusedException(int status, String message, List<String> readings) {
    super(message);
    this.status = status;
    this.readings = readings;
  }

  /** What may mean one thing or another, each as it would be clear. */
  public static RefusedException unclear(String message, List<String> readings) {
    return new RefusedException(400, message, List.copyOf(readings));
  }

  public static RefusedException bad(String message) {
    return new RefusedException(400, message);
  }

  /** What cannot be written, and what to do for one who has a page and no options of a command. */
  public static RefusedException of(CannotWriteException e) {
    return new RefusedException(
        500, "this could not be written: " + e.file() + ": " + e.found() + "; " + e.right());
  }

  /** What may be meant, where that is not clear. */
  public List<String> readings() {
    return readings;
  }

  public int status() {
    return status;
  }
}
