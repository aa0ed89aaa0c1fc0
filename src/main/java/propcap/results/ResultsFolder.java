package propcap.results;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import propcap.disk.CannotWriteException;
import propcap.disk.FileSet;
import propcap.disk.WholeFile;

/**
 * The folder in which results lie, kept from others while they are worked out. The files of an
 * answer are replaced together; what else lies there is left alone.
 */
public final class ResultsFolder implements AutoCloseable {
  private static final String ELSEWHERE = "take another folder with --out";

  /**
   * With less room than this the springs are not worth simulating, in bytes: three times the
   * largest answer of the demonstration (600 kB), since old and new lie side by side for a while.
   */
  private static final long LEAST_ROOM = 2 << 20;

  private static final String NOT_OURS = "this is none of Propcap's making";

  private final Path folder;
  private final AnswerKind answer;
  private final String source;
  private final FileSet files;

  private ResultsFolder(Path folder, AnswerKind answer, String source, FileSet files) {
    this.folder = folder;
    this.answer = answer;
    this.source = source;
    this.files = files;
  }

  /**
   * Who asks for a folder.
   *
   * @param source the file of the scenario or record that the results are of
   * @param doing such as {@code propcap run spring.yaml}: others are told who keep out
   * @param isNamed whether the grower has named the folder; then results of another scenario may be
   *     replaced there
   */
  public record Asker(Path source, String doing, boolean isNamed) {}

  /**
   * Opens a folder, before any work is done. Others can't write there until it is closed.
   *
   * @param folder made if there is none
   * @param answer what is to be written there
   * @throws CannotWriteException where it must not or cannot be written there, saying why
   */
  public static ResultsFolder open(Path folder, AnswerKind answer, Asker asker) throws IOException {
    try {
      FileSet files = FileSet.open(folder, asker.doing());
      try {
        String source = reached(folder, asker.source());
        ResultsFolder results = new ResultsFolder(folder, answer, source, files);
        if (!asker.isNamed()) {
          results.requireSameSource(asker.source());
        }
        results.requireFree();
        files.requireRoom(LEAST_ROOM);
        return results;
      } catch (IOException | RuntimeException | Error e) {
        files.close();
        throw e;
      }
    } catch (CannotWriteException e) {
      throw e.or(ELSEWHERE);
    }
  }

  /** Finishes what a program was at that was killed while it wrote in one of these folders. */
  public static void finishIn(Path parent) {
    try (DirectoryStream<Path> folders = Files.newDirectoryStream(parent, FileSet::isUnfinished)) {
      for (Path folder : folders) {
        finish(folder);
      }
    } catch (IOException e) {
      // There are no results yet.
    }
  }

  private static void finish(Path folder) {
    try {
      FileSet.open(folder, "another run of Propcap").close();
    } catch (IOException e) {
      // Whoever writes there next is told why.
    }
  }

  /** A file as it is reached from the folder, so that both may be moved together. */
  private static String reached(Path folder, Path source) throws IOException {
    Path whole = source.toAbsolutePath().normalize();
    Path above = Optional.ofNullable(whole.getParent()).orElse(whole);
    Path file = Files.exists(above) ? above.toRealPath().resolve(whole.getFileName()) : whole;
    return folder.toRealPath().relativize(file).toString().replace('\n', ' ');
  }

  /** Two scenarios of one name in different folders would have their results in the same one. */
  private void requireSameSource(Path asking) throws CannotWriteException {
    Optional<WrittenRecord> old =
        WrittenRecord.read(folder, answer)
            .filter(r -> !r.source().equals(source))
            .filter(r -> r.names().stream().anyMatch(n -> Files.exists(folder.resolve(n))));
    if (old.isPresent()) {
      throw new CannotWriteException(
              folder,
              "this holds the results of "
                  + folder.resolve(old.get().source()).normalize()
                  + ", not of "
                  + asking,
              "move it elsewhere")
          .or("name this folder with --out to replace them");
    }
  }

  /** Refuses to replace what is not this answer's. */
  private void requireFree() throws IOException {
    for (String name : answer.files()) {
      Path file = folder.resolve(name);
      if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
        continue;
      }
      Optional<String> trouble =
          Files.isDirectory(file)
              ? Optional.of("this folder is in the way of a file")
              : otherWith(name)
                  .map(json -> "this is part of another answer, with " + json)
                  .or(() -> isOurs(name) ? Optional.empty() : Optional.of(NOT_OURS));
      if (trouble.isPresent()) {
        throw new CannotWriteException(file, trouble.get(), "move it elsewhere");
      }
      WholeFile.check(file);
    }
  }

  /** Known by the record of what was written, or, where there is none, by the answer itself. */
  private boolean isOurs(String name) {
    return WrittenRecord.read(folder, answer)
        .map(old -> old.marks().containsKey(name))
        .orElseGet(() -> answer.isIn(folder));
  }

  /** The other answer in the folder that has a file of this name, by its file for programs. */
  private Optional<String> otherWith(String name) throws IOException {
    Path own = WrittenRecord.file(folder, answer);
    return FileSet.outOfSight(folder).stream()
        .filter(file -> !file.equals(own))
        .map(WrittenRecord::read)
        .flatMap(Optional::stream)
        .map(WrittenRecord::names)
        .filter(names -> names.contains(name))
        .flatMap(names -> names.stream().filter(each -> each.endsWith(".json")))
        .findFirst();
  }

  /**
   * Puts an answer's files in the place of its older ones. One that the grower has changed is kept
   * as {@code .bak}.
   *
   * @param texts by name
   * @return the files, in the order given, and after them the copies kept
   */
  public List<Path> write(Map<String, String> texts) throws IOException {
    if (!texts.keySet().equals(Set.copyOf(answer.files()))) {
      throw new IllegalStateException(answer.word() + " has other files than " + texts.keySet());
    }
    try {
      requireFree();
      return replace(texts);
    } catch (CannotWriteException e) {
      throw e.or(ELSEWHERE);
    }
  }

  private List<Path> replace(Map<String, String> texts) throws IOException {
    Map<Path, String> all = new LinkedHashMap<>();
    texts.forEach((name, text) -> all.put(folder.resolve(name), text));
    List<Path> told = new ArrayList<>(all.keySet());
    List<Path> outdated = new ArrayList<>();
    WrittenRecord fresh = WrittenRecord.of(source, texts);
    Optional<WrittenRecord> old = WrittenRecord.read(folder, answer);
    for (String name : old.map(WrittenRecord::names).orElse(List.of())) {
      Path file = folder.resolve(name);
      boolean isThere = Files.isRegularFile(file);
      if (isThere && old.get().isOther(name, file) && fresh.isOther(name, file)) {
        told.add(WholeFile.keep(file));
      }
      if (!texts.containsKey(name)) {
        outdated.add(file);
      }
    }
    all.put(WrittenRecord.file(folder, answer), fresh.text());
    files.write(all, outdated);
    return told;
  }

  /** What is kept there of a long answer while it is worked out. */
  public FinishedRuns finishedRuns() {
    return new FinishedRuns(FileSet.outOfSight(folder, answer.word() + "-runs"));
  }

  /** Lets others write there. */
  @Override
  public void close() throws IOException {
    files.close();
  }
}
