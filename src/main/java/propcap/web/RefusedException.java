package propcap.web;

/** A request that is not carried out; nothing was changed. The message says why. */
final class RefusedException extends Exception {
  private static final long serialVersionUID = 1;

  private final int status;

  /**
   * Refuses.
   *
   * @param status as HTTP counts them, such as 400
   */
  RefusedException(int status, String message) {
    super(message);
    this.status = status;
  }

  static RefusedException bad(String message) {
    return new RefusedException(400, message);
  }

  int status() {
    return status;
  }
}
