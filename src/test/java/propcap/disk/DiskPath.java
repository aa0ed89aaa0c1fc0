package propcap.disk;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.nio.file.FileSystem;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Iterator;
import org.jspecify.annotations.Nullable;

/** A path of this machine that says it is on another disk, and so do all that are made of it. */
record DiskPath(FileSystem files, Path path) implements InvocationHandler {

  static Path on(FileSystem files, Path path) {
    return (Path)
        Proxy.newProxyInstance(
            DiskPath.class.getClassLoader(),
            new Class<?>[] {Path.class},
            new DiskPath(files, real(path)));
  }

  static Iterator<Path> on(FileSystem files, Iterator<Path> paths) {
    return new Iterator<>() {
      @Override
      public boolean hasNext() {
        return paths.hasNext();
      }

      @Override
      public Path next() {
        return on(files, paths.next());
      }
    };
  }

  static Path real(Path path) {
    return Proxy.isProxyClass(path.getClass())
            && Proxy.getInvocationHandler(path) instanceof DiskPath of
        ? of.path()
        : path;
  }

  @Override
  public @Nullable Object invoke(Object proxy, Method method, Object @Nullable [] args)
      throws Throwable {
    if (method.getName().equals("getFileSystem")) {
      return files;
    }
    Object[] real =
        args == null
            ? new Object[0]
            : Arrays.stream(args).map(a -> a instanceof Path p ? real(p) : a).toArray();
    try {
      return wrapped(method.invoke(path, real));
    } catch (InvocationTargetException e) {
      throw e.getCause();
    }
  }

  @SuppressWarnings("unchecked")
  private @Nullable Object wrapped(@Nullable Object result) {
    if (result instanceof Path made) {
      return on(files, made);
    }
    return result instanceof Iterator<?> paths ? on(files, (Iterator<Path>) paths) : result;
  }
}
