package propcap.disk;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;

/**
 * One program at a time writes in a folder. The lock is the operating system's, which frees it when
 * a program ends, however it ends; the file that bears it says who holds it.
 */
final class FolderLock implements AutoCloseable {
  private static final int MOST_BYTES = 1000;

  /**
   * What this program holds itself, and for what. The system's lock belongs to the whole program,
   * and is lost when any part of it closes the file: so no part opens what another holds.
   */
  private static final Map<Path, String> HELD = new ConcurrentHashMap<>();

  private final Path file;
  private final Path key;
  private final FileChannel channel;

  private FolderLock(Path file, Path key, FileChannel channel) {
    this.file = file;
    this.key = key;
    this.channel = channel;
  }

  /**
   * Takes the lock.
   *
   * @param hidden the folder for what is out of sight, made if need be
   * @param folder what is locked, as the grower knows it
   * @param doing what for, such as {@code propcap run spring.yaml}
   * @throws CannotWriteException where another holds it
   */
  static FolderLock take(Path hidden, Path folder, String doing) throws IOException {
    IOException gone = inUse(folder, "");
    for (int tries = 0; tries < Disk.MOST_TRIES; tries++) {
      try {
        Disk.make(hidden);
        return locked(hidden.resolve("lock"), folder, doing);
      } catch (NoSuchFileException e) {
        // Another that ended just now took away what it had made.
        gone = e;
      }
    }
    throw gone;
  }

  private static FolderLock locked(Path file, Path folder, String doing) throws IOException {
    Path key = folder.toRealPath();
    String holder = HELD.putIfAbsent(key, doing);
    if (holder != null) {
      throw inUse(folder, holder);
    }
    FolderLock lock = null;
    try {
      lock = new FolderLock(file, key, opened(file, folder));
      write(lock.channel, doing + thisProcess());
      return lock;
    } catch (IOException | RuntimeException | Error e) {
      if (lock == null) {
        HELD.remove(key);
      } else {
        lock.close();
      }
      throw e;
    }
  }

  /** Opens the lock's file with the system's lock on it. */
  private static FileChannel opened(Path file, Path folder) throws IOException {
    make(file);
    Object before = identity(file);
    FileChannel channel = FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE);
    boolean isOurs = false;
    try {
      if (channel.tryLock() == null) {
        throw inUse(folder, read(channel));
      }
      // Whoever held it may have deleted the file after it was opened here.
      isOurs = before.equals(identity(file));
      if (!isOurs) {
        throw new NoSuchFileException(file.toString());
      }
      return channel;
    } finally {
      if (!isOurs) {
        channel.close();
      }
    }
  }

  private static void make(Path file) throws IOException {
    try {
      Files.createFile(file);
    } catch (FileAlreadyExistsException e) {
      // Another's, or left by a program that was killed.
    }
  }

  private static Object identity(Path file) throws IOException {
    BasicFileAttributes is = Files.readAttributes(file, BasicFileAttributes.class);
    return Objects.requireNonNullElse(is.fileKey(), "");
  }

  private static void write(FileChannel channel, String text) throws IOException {
    channel.truncate(0);
    ByteBuffer left = StandardCharsets.UTF_8.encode(text);
    while (left.hasRemaining()) {
      channel.write(left);
    }
  }

  private static String read(FileChannel channel) throws IOException {
    ByteBuffer text = ByteBuffer.allocate(MOST_BYTES);
    channel.read(text, 0);
    return StandardCharsets.UTF_8.decode(text.flip()).toString().strip();
  }

  private static String thisProcess() {
    ProcessHandle process = ProcessHandle.current();
    String since =
        process
            .info()
            .startInstant()
            .map(
                start ->
                    ", since "
                        + DateTimeFormatter.ofPattern("d MMMM HH:mm", Locale.ENGLISH)
                            .withZone(ZoneId.systemDefault())
                            .format(start))
            .orElse("");
    return " (process " + process.pid() + since + ")";
  }

  private static CannotWriteException inUse(Path folder, String holder) {
    return new CannotWriteException(
        folder,
        "in use by " + (holder.isEmpty() ? "another run of Propcap" : holder),
        "wait until it has ended");
  }

  /** Frees the folder; the lock's file goes with it. */
  @Override
  public void close() throws IOException {
    try {
      Files.deleteIfExists(file);
    } finally {
      try {
        channel.close();
      } finally {
        HELD.remove(key);
      }
    }
  }
}
