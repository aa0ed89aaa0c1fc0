package propcap.web.desk;

import com.google.gson.Gson;
import com.google.gson.JsonParseException;
import com.google.gson.annotations.SerializedName;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.disk.WholeFile;
import propcap.web.request.RefusedException;

/**
 * The draft as it lies beside the scenario, in a hidden file, so that it comes back after the
 * browser or the server was killed. It is written after every change and gone when there is none.
 */
final class DraftFile {
  private static final Gson GSON = new Gson();

  /** A draft with the folder's names of the files. */
  private record Named(
      Map<String, String> texts,
      Map<String, String> seen,
      @SerializedName("what-ifs") List<String> whatIfs) {}

  private final Folder folder;
  private final Path file;

  DraftFile(Folder folder, Path scenario) {
    this.folder = folder;
    this.file = folder.root().resolve("." + Folder.stem(scenario) + ".draft.json");
  }

  void write(Draft draft) throws IOException {
    if (draft.equals(Draft.NONE)) {
      Files.deleteIfExists(file);
      return;
    }
    List<String> whatIfs = draft.whatIfs().stream().map(folder::name).toList();
    Named named = new Named(named(draft.texts()), named(draft.seen()), whatIfs);
    WholeFile.write(file, GSON.toJson(named));
  }

  private Map<String, String> named(Map<Path, String> texts) {
    Map<String, String> named = new LinkedHashMap<>();
    texts.forEach((path, text) -> named.put(folder.name(path), text));
    return named;
  }

  /** The draft that was left; none where the file is missing or no draft of ours. */
  Draft read() throws IOException {
    String text = folder.disk().shown(file);
    if (text.isEmpty()) {
      return Draft.NONE;
    }
    try {
      Named named = GSON.fromJson(text, Named.class);
      List<Path> whatIfs = new ArrayList<>();
      for (String name : named.whatIfs()) {
        whatIfs.add(file(name));
      }
      return new Draft(files(named.texts()), whatIfs, files(named.seen()));
    } catch (JsonParseException | NullPointerException | RefusedException e) {
      // Not ours to throw away: it is kept under another name.
      Files.move(file, file.resolveSibling(file.getFileName() + ".unread"));
      return Draft.NONE;
    }
  }

  private Map<Path, String> files(Map<String, String> named) throws RefusedException {
    Map<Path, String> files = new LinkedHashMap<>();
    for (Map.Entry<String, String> text : named.entrySet()) {
      files.put(file(text.getKey()), text.getValue());
    }
    return files;
  }

  private Path file(String name) throws RefusedException {
    return folder.inside(folder.root().resolve(name));
  }
}
