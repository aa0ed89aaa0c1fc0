package propcap.web.desk;

import com.google.gson.Gson;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
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
    JsonObject json = new JsonObject();
    json.add("texts", GSON.toJsonTree(named(draft.texts())));
    json.add("seen", GSON.toJsonTree(named(draft.seen())));
    json.add("what-ifs", GSON.toJsonTree(draft.whatIfs().stream().map(folder::name).toList()));
    WholeFile.write(file, GSON.toJson(json));
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
      JsonObject json = JsonParser.parseString(text).getAsJsonObject();
      List<Path> whatIfs = new ArrayList<>();
      for (var name : json.getAsJsonArray("what-ifs")) {
        whatIfs.add(folder.inside(folder.root().resolve(name.getAsString())));
      }
      return new Draft(
          files(json.getAsJsonObject("texts")), whatIfs, files(json.getAsJsonObject("seen")));
    } catch (JsonParseException
        | IllegalStateException
        | NullPointerException
        | RefusedException e) {
      // Not ours to throw away: it is kept under another name.
      Files.move(file, file.resolveSibling(file.getFileName() + ".unread"));
      return Draft.NONE;
    }
  }

  private Map<Path, String> files(JsonObject named) throws RefusedException {
    Map<Path, String> files = new LinkedHashMap<>();
    for (String name : named.keySet()) {
      files.put(folder.inside(folder.root().resolve(name)), named.get(name).getAsString());
    }
    return files;
  }
}
