package propcap.disk;

import java.nio.file.FileStore;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.nio.file.WatchService;
import java.nio.file.attribute.UserPrincipalLookupService;
import java.nio.file.spi.FileSystemProvider;
import java.util.Set;

/** This machine's files, by another provider. */
final class DiskFileSystem extends FileSystem {
  private static final FileSystem MACHINE = FileSystems.getDefault();

  private final FileSystemProvider provider;

  DiskFileSystem(FileSystemProvider provider) {
    this.provider = provider;
  }

  @Override
  public FileSystemProvider provider() {
    return provider;
  }

  @Override
  public void close() {}

  @Override
  public boolean isOpen() {
    return true;
  }

  @Override
  public boolean isReadOnly() {
    return false;
  }

  @Override
  public String getSeparator() {
    return MACHINE.getSeparator();
  }

  @Override
  public Iterable<Path> getRootDirectories() {
    return MACHINE.getRootDirectories();
  }

  @Override
  public Iterable<FileStore> getFileStores() {
    return MACHINE.getFileStores();
  }

  @Override
  public Set<String> supportedFileAttributeViews() {
    return MACHINE.supportedFileAttributeViews();
  }

  @Override
  public Path getPath(String first, String... more) {
    return DiskPath.on(this, MACHINE.getPath(first, more));
  }

  @Override
  public PathMatcher getPathMatcher(String pattern) {
    PathMatcher matcher = MACHINE.getPathMatcher(pattern);
    return path -> matcher.matches(DiskPath.real(path));
  }

  @Override
  public UserPrincipalLookupService getUserPrincipalLookupService() {
    return MACHINE.getUserPrincipalLookupService();
  }

  @Override
  public WatchService newWatchService() {
    throw new UnsupportedOperationException();
  }
}
