package propcap.web.request;

import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.disk.CannotWriteException;

/** A request that is not carried out; nothing was changed. The message says why. */
public final class RefusedException extends Exception {
  private static final long serialVersionUID = 1;

  /**
   * What the page is told.
   *
   * @param refused why, in words
   * @param field of the request that it is about; null where it is about none
   * @param why the same words without what they are about
   * @param typed what may mean one thing or another; null where it is clear
   * @param readings each of those as it would be clear
   */
  public record Refusal(
      String refused,
      @Nullable String field,
      @Nullable String why,
      @Nullable String typed,
      List<String> readings) {}

  private final int status;
  private final transient Refusal refusal;

  /**
   * Refuses.
   *
   * @param status as HTTP counts them, such as 400
   */
  public RefusedException(int status, String message) {
    this(status, new Refusal(message, null, null, null, List.of()));
  }

  private RefusedException(int status, Refusal refusal) {
    super(refusal.refused());
    this.status = status;
    this.refusal = refusal;
  }

  /** What is typed may mean one thing or another, each as it would be clear. */
  public static RefusedException unclear(String typed, String why, List<String> readings) {
    return new RefusedException(
        400, new Refusal(typed + " " + why, null, null, typed, List.copyOf(readings)));
  }

  /** A field of the request is wrong. */
  public static RefusedException field(String key, String why) {
    return new RefusedException(400, new Refusal(key + " " + why, key, why, null, List.of()));
  }

  /** A change that the plan does not take. */
  public static RefusedException change(@Nullable String why) {
    return new RefusedException(
        400, new Refusal("this change cannot be made: " + why, null, why, null, List.of()));
  }

  public static RefusedException bad(String message) {
    return new RefusedException(400, message);
  }

  /** What cannot be written, and what to do for one who has a page and no options of a command. */
  public static RefusedException of(CannotWriteException e) {
    return new RefusedException(
        500, "this could not be written: " + e.file() + ": " + e.found() + "; " + e.right());
  }

  public Refusal refusal() {
    return refusal;
  }

  public int status() {
    return status;
  }
}
