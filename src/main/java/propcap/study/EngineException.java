package propcap.study;

/** An engine that could not be reached or gave up; its message says why and what to do. */
public final class EngineException extends RuntimeException {
  public EngineException(String message) {
    super(message);
  }

  public EngineException(String message, Throwable cause) {
    super(message, cause);
  }
}
