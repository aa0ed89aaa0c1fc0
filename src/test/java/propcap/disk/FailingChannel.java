package propcap.disk;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.ReadableByteChannel;
import java.nio.channels.WritableByteChannel;

/** A file of which half of what is left is written at a time; each time it can go wrong. */
final class FailingChannel extends FileChannel {
  private final FailingDisk disk;
  private final FileChannel file;

  FailingChannel(FailingDisk disk, FileChannel file) {
    this.disk = disk;
    this.file = file;
  }

  @Override
  public int write(ByteBuffer bytes) throws IOException {
    int all = bytes.remaining();
    disk.step("write");
    ByteBuffer half = bytes.duplicate().limit(bytes.position() + (all + 1) / 2);
    int written = file.write(half);
    bytes.position(bytes.position() + written);
    return written;
  }

  @Override
  public FileChannel truncate(long size) throws IOException {
    disk.step("cut");
    file.truncate(size);
    return this;
  }

  @Override
  public void force(boolean metaData) throws IOException {
    disk.step("force");
    file.force(metaData);
  }

  @Override
  public int read(ByteBuffer to) throws IOException {
    return file.read(to);
  }

  @Override
  public long read(ByteBuffer[] to, int offset, int length) throws IOException {
    return file.read(to, offset, length);
  }

  @Override
  public int read(ByteBuffer to, long position) throws IOException {
    return file.read(to, position);
  }

  @Override
  public long position() throws IOException {
    return file.position();
  }

  @Override
  public FileChannel position(long position) throws IOException {
    file.position(position);
    return this;
  }

  @Override
  public long size() throws IOException {
    return file.size();
  }

  @Override
  public FileLock tryLock(long position, long size, boolean shared) throws IOException {
    return file.tryLock(position, size, shared);
  }

  @Override
  protected void implCloseChannel() throws IOException {
    file.close();
  }

  @Override
  public long write(ByteBuffer[] from, int offset, int length) {
    throw new UnsupportedOperationException();
  }

  @Override
  public int write(ByteBuffer from, long position) {
    throw new UnsupportedOperationException();
  }

  @Override
  public long transferTo(long position, long count, WritableByteChannel to) {
    throw new UnsupportedOperationException();
  }

  @Override
  public long transferFrom(ReadableByteChannel from, long position, long count) {
    throw new UnsupportedOperationException();
  }

  @Override
  public MappedByteBuffer map(MapMode mode, long position, long size) {
    throw new UnsupportedOperationException();
  }

  @Override
  public FileLock lock(long position, long size, boolean shared) {
    throw new UnsupportedOperationException();
  }
}
