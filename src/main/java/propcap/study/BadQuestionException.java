package propcap.study;

/** A question that cannot be asked of a scenario; the message says what would be right. */
public final class BadQuestionException extends Exception {
  private static final long serialVersionUID = 1;

  public BadQuestionException(String message) {
    super(message);
  }
}
