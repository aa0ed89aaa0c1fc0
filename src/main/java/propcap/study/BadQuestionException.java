package propcap.study;

/** A question that cannot be asked of a scenario; the message says what would be right. */
public final class BadQuestionException extends Exception {
  private static final long serialVersionUID = 1;

  public BadQuestionException(String message) {
    super(message);
  }

  /** Refuses a goal that is no chance. */
  public static void unlessChance(double goal) throws BadQuestionException {
    if (!(goal > 0 && goal < 1)) {
      throw new BadQuestionException("a goal is a chance between 0 and 100 %, such as 90%");
    }
  }
}
