package propcap.disk;

import java.io.IOException;
import java.nio.channels.ClosedByInterruptException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileStore;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.Locale;

/** Something that cannot be written: which file, why, and what would be right. */
public final class CannotWriteException extends IOException {
  private static final long serialVersionUID = 1;

  private final transient Path file;
  private final String found;
  private final String right;
  private final String otherwise;

  /**
   * Says so.
   *
   * @param found why, such as {@code the disk is full}
   * @param right what to do, such as {@code free some room}
   */
  public CannotWriteException(Path file, String found, String right) {
    this(file, found, right, "");
  }

  private CannotWriteException(Path file, String found, String right, String otherwise) {
    super(file + ": " + found + "; " + right + otherwise);
    this.file = file;
    this.found = found;
    this.right = right;
    this.otherwise = otherwise;
  }

  public Path file() {
    return file;
  }

  public String found() {
    return found;
  }

  public String right() {
    return right;
  }

  /**
   * This fault, with another thing to do beside what is to be done; {@link #right} is as it was,
   * for those who cannot do the other.
   */
  public CannotWriteException or(String another) {
    return new CannotWriteException(file, found, right, otherwise + ", or " + another);
  }

  /**
   * What the system refused, in a grower's words; an interrupt stays one.
   *
   * @param file as the grower knows it
   */
  static IOException of(Path file, IOException e) {
    if (e instanceof CannotWriteException || e instanceof ClosedByInterruptException) {
      return e;
    }
    String reason = reason(e);
    String known = reason.toLowerCase(Locale.ROOT);
    if (e instanceof AccessDeniedException) {
      return new CannotWriteException(file, "you may not write here", "have its rights changed");
    }
    if (e instanceof FileAlreadyExistsException
        || e instanceof NotDirectoryException
        || known.contains("not a directory")) {
      return new CannotWriteException(
          Disk.nearest(file),
          "this is in the way of a folder",
          "move it elsewhere or take another name");
    }
    if (e instanceof NoSuchFileException) {
      return new CannotWriteException(
          file, "nothing can be written here", "take a folder that is there");
    }
    if (known.contains("file name too long")) {
      return new CannotWriteException(file, "the name is too long", "take a shorter one");
    }
    if (known.contains("read-only")) {
      return new CannotWriteException(file, "this disk can only be read", "take another disk");
    }
    if (known.contains("no space") || known.contains("quota") || isFull(file)) {
      return new CannotWriteException(file, "the disk is full", "free some room");
    }
    if (known.contains("busy")) {
      return new CannotWriteException(
          file, "the system holds this, as it does a mount point", "free it");
    }
    return new CannotWriteException(
        file, "this cannot be written: " + reason, "take another place");
  }

  private static String reason(IOException e) {
    String reason = e instanceof FileSystemException f ? f.getReason() : e.getMessage();
    return reason == null ? e.getClass().getSimpleName() : reason;
  }

  /** Where the system speaks another language, the room itself is asked. */
  private static boolean isFull(Path file) {
    try {
      FileStore disk = Files.getFileStore(Disk.nearest(file));
      return disk.getUsableSpace() == 0 && disk.getTotalSpace() > 0;
    } catch (IOException e) {
      return false;
    }
  }
}
