package propcap.web.desk;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import propcap.files.edit.YamlText;
import propcap.files.edit.YamlText.Step;
import propcap.files.scenario.WrittenScenario;
import propcap.files.text.UnsavedTexts;

/** A scenario under another name, with copies of the lists that are changed in it. */
record SavedAs(Folder folder, Path scenario, UnsavedTexts unsaved) {

  /** The drafts, and the texts that make the scenario under its new name. */
  UnsavedTexts under(Path file) throws IOException {
    WrittenScenario.Entry head = WrittenScenario.of(scenario, unsaved).head();
    String text = unsaved.text(scenario);
    UnsavedTexts all = unsaved;
    for (String key : List.of("crops", "sowings", "so-far")) {
      WrittenScenario.Cell named = head.cells().get(key);
      if (named == null || !named.spot().file().equals(scenario)) {
        continue;
      }
      Path list = scenario.resolveSibling(named.text());
      if (unsaved.of(list).isPresent()) {
        String ending = key.equals("crops") ? ".yaml" : ".csv";
        Path copy = all.free(folder.root(), Folder.stem(file) + "-" + key, ending);
        all = all.with(copy, unsaved.text(list));
        text = YamlText.set(text, List.of(Step.to(key)), folder.name(copy));
      }
    }
    return all.with(file, text);
  }
}
