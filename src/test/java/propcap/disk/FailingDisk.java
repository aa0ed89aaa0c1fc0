package propcap.disk;

import java.io.IOException;
import java.net.URI;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.AccessMode;
import java.nio.file.CopyOption;
import java.nio.file.DirectoryStream;
import java.nio.file.FileStore;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.FileAttributeView;
import java.nio.file.spi.FileSystemProvider;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The disk of this machine, on which each call that changes something can go wrong: a file or
 * folder made, opened to be written, written (half of what is left at a time), cut, forced, copied,
 * moved or deleted. What is made of its paths stays on it.
 */
public final class FailingDisk extends FileSystemProvider {
  /** What happens instead of the calls, counted from 1; where nothing does, they are made. */
  @FunctionalInterface
  public interface Trouble {
    void before(int call, String what) throws IOException;
  }

  /** The end of the process, as far as one that goes on can show it. */
  public static final class Killed extends Error {
    private static final long serialVersionUID = 1;
  }

  private final Trouble trouble;
  private final FileSystem files = new DiskFileSystem(this);
  private final List<String> reads = new ArrayList<>();
  private int calls;

  public FailingDisk(Trouble trouble) {
    this.trouble = trouble;
  }

  /** A disk on which everything goes well. */
  public static FailingDisk sound() {
    return new FailingDisk((call, what) -> {});
  }

  /** A disk on which a call and all after it come to nothing, as if the process had ended. */
  public static FailingDisk killedAt(int last) {
    return new FailingDisk(
        (call, what) -> {
          if (call >= last) {
            throw new Killed();
          }
        });
  }

  /** A disk on which one call fails. */
  public static FailingDisk failingAt(int failing, IOException e) {
    return new FailingDisk(
        (call, what) -> {
          if (call == failing) {
            throw e;
          }
        });
  }

  /** A disk without room from a call on; what takes none goes on. */
  public static FailingDisk fullFrom(int first) {
    return new FailingDisk(
        (call, what) -> {
          if (call >= first && Set.of("make", "write", "copy").contains(what)) {
            throw new IOException("No space left on device");
          }
        });
  }

  /** A path of the machine as one of this disk. */
  public Path at(Path path) {
    return DiskPath.on(files, path);
  }

  public int calls() {
    return calls;
  }

  /** The name of each file that was opened to be read, as often as it was. */
  public List<String> reads() {
    return reads;
  }

  void step(String what) throws IOException {
    trouble.before(++calls, what);
  }

  private static Path real(Path path) {
    return DiskPath.real(path);
  }

  private static FileSystemProvider machine() {
    return FileSystems.getDefault().provider();
  }

  @Override
  public FileChannel newFileChannel(
      Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes)
      throws IOException {
    boolean isWritten = options.contains(StandardOpenOption.WRITE);
    if (isWritten) {
      step("open");
    }
    return new FailingChannel(this, machine().newFileChannel(real(path), options, attributes));
  }

  @Override
  public SeekableByteChannel newByteChannel(
      Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes)
      throws IOException {
    boolean isMade =
        options.contains(StandardOpenOption.CREATE_NEW)
            || options.contains(StandardOpenOption.CREATE)
            || options.contains(StandardOpenOption.WRITE);
    if (isMade) {
      step("make");
      return new FailingChannel(this, machine().newFileChannel(real(path), options, attributes));
    }
    reads.add(path.getFileName().toString());
    return machine().newByteChannel(real(path), options, attributes);
  }

  @Override
  public DirectoryStream<Path> newDirectoryStream(
      Path folder, DirectoryStream.Filter<? super Path> filter) throws IOException {
    DirectoryStream<Path> all =
        machine().newDirectoryStream(real(folder), each -> filter.accept(at(each)));
    return new DirectoryStream<>() {
      @Override
      public Iterator<Path> iterator() {
        return DiskPath.on(files, all.iterator());
      }

      @Override
      public void close() throws IOException {
        all.close();
      }
    };
  }

  @Override
  public void createDirectory(Path folder, FileAttribute<?>... attributes) throws IOException {
    step("make");
    machine().createDirectory(real(folder), attributes);
  }

  @Override
  public void delete(Path path) throws IOException {
    step("delete");
    machine().delete(real(path));
  }

  @Override
  public void copy(Path from, Path to, CopyOption... options) throws IOException {
    step("copy");
    machine().copy(real(from), real(to), options);
  }

  @Override
  public void move(Path from, Path to, CopyOption... options) throws IOException {
    step("move");
    machine().move(real(from), real(to), options);
  }

  @Override
  public boolean isSameFile(Path path, Path other) throws IOException {
    return machine().isSameFile(real(path), real(other));
  }

  @Override
  public boolean isHidden(Path path) throws IOException {
    return machine().isHidden(real(path));
  }

  @Override
  public FileStore getFileStore(Path path) throws IOException {
    return machine().getFileStore(real(path));
  }

  @Override
  public void checkAccess(Path path, AccessMode... modes) throws IOException {
    machine().checkAccess(real(path), modes);
  }

  @Override
  public <V extends FileAttributeView> V getFileAttributeView(
      Path path, Class<V> type, LinkOption... options) {
    return machine().getFileAttributeView(real(path), type, options);
  }

  @Override
  public <A extends BasicFileAttributes> A readAttributes(
      Path path, Class<A> type, LinkOption... options) throws IOException {
    return machine().readAttributes(real(path), type, options);
  }

  @Override
  public Map<String, Object> readAttributes(Path path, String attributes, LinkOption... options)
      throws IOException {
    return machine().readAttributes(real(path), attributes, options);
  }

  @Override
  public void setAttribute(Path path, String attribute, Object value, LinkOption... options)
      throws IOException {
    step("set");
    machine().setAttribute(real(path), attribute, value, options);
  }

  @Override
  public String getScheme() {
    return "failing";
  }

  @Override
  public FileSystem newFileSystem(URI uri, Map<String, ?> env) {
    throw new UnsupportedOperationException();
  }

  @Override
  public FileSystem getFileSystem(URI uri) {
    return files;
  }

  @Override
  public Path getPath(URI uri) {
    throw new UnsupportedOperationException();
  }
}
