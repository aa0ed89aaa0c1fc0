package propcap.results;

import com.google.gson.JsonElement;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * What is written of a kind of answer: into which folder, in which files, and how it is known
 * again.
 *
 * @param word its name in the record of what was written, which no other kind has
 * @param ending what the name of the folder ends in where none is given, after the name of the
 *     scenario's file
 * @param file the one for other programs
 * @param keys that this file must hold, apart by spaces
 * @param others the other files, apart by spaces
 */
public record AnswerKind(String word, String ending, String file, String keys, String others) {

  /** All files that it has. */
  public List<String> files() {
    return Stream.concat(Stream.of(file), Arrays.stream(others.split(" ", -1))).toList();
  }

  /** Whether a folder holds this answer, as far as its file for other programs tells. */
  public boolean isIn(Path folder) {
    Path path = folder.resolve(file);
    if (!Files.isRegularFile(path)) {
      return false;
    }
    try (Reader in = Files.newBufferedReader(path)) {
      JsonElement results = JsonParser.parseReader(in);
      return results.isJsonObject()
          && results.getAsJsonObject().keySet().containsAll(List.of(keys.split(" ", -1)));
    } catch (IOException | JsonParseException e) {
      return false;
    }
  }
}
