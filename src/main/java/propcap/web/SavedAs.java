package propcap.web;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import propcap.files.Drafts;
import propcap.files.Written;
import propcap.files.YamlText;
import propcap.files.YamlText.Step;

/** A scenario under another name, with copies of the lists that are changed in it. */
record SavedAs(Folder folder, Path scenario, Drafts drafts) {

  /** The drafts, and the texts that make the scenario under its new name. */
  Drafts under(Path file) throws IOException {
    Written.Entry head = Written.of(scenario, drafts).head();
    String text = drafts.text(scenario);
    Drafts all = drafts;
    for (String key : List.of("crops", "sowings")) {
      Written.Cell named = head.cells().get(key);
      if (named == null || !named.file().equals(scenario)) {
        continue;
      }
      Path list = scenario.resolveSibling(named.text());
      if (drafts.of(list).isPresent()) {
        String ending = key.equals("crops") ? ".yaml" : ".csv";
        Path copy = all.free(folder.root(), Folder.stem(file) + "-" + key, ending);
        all = all.with(copy, drafts.text(list));
        text = YamlText.set(text, List.of(Step.to(key)), folder.name(copy));
      }
    }
    return all.with(file, text);
  }
}
