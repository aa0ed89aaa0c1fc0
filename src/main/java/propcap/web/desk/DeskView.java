package propcap.web.desk;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import propcap.files.scenario.ScenarioReader.Reading;
import propcap.files.text.UnsavedTexts;

/**
 * The desk at one moment.
 *
 * @param scenarios the one that was opened, and those beside it
 * @param titles their names; empty where they have none
 * @param texts what is changed and not saved, in the place of files
 * @param today the day by the grower, the log or the clock
 * @param clock the day by the clock
 */
public record DeskView(
    long version,
    Folder folder,
    Path scenario,
    Path shown,
    List<Path> scenarios,
    List<String> titles,
    UnsavedTexts texts,
    Reading reading,
    LocalDate today,
    LocalDate clock,
    Readings.Day day,
    List<Path> conflicts,
    boolean canUndo,
    boolean canRedo,
    boolean isRestored) {}
