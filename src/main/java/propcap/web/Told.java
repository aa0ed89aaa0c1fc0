package propcap.web;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import propcap.files.scenario.WrittenScenario;
import propcap.files.text.Fault;
import propcap.web.question.Questions;

/**
 * A fault as the page shows it, at its field.
 *
 * @param list such as {@code places}; empty for the scenario's own keys
 * @param row which of the list; -1: none of them
 * @param key empty where it is about the whole row
 * @param where its file and line
 * @param wrong the word that a known one is like; empty where none is
 * @param meant that known word
 */
record Told(
    String list, int row, String key, String words, String where, String wrong, String meant) {
  private static final Pattern MEANT = Pattern.compile("(?:.*: )?did you mean (.+)\\?");
  private static final Pattern QUOTED = Pattern.compile("[^']*'([^']+)'[^']*");

  /** Where the page's own questions find what is left empty. */
  private static final String FINDS_IT =
      "; or leave it empty, and under Questions “" + Questions.title("plan") + "” finds it";

  static Told of(Fault fault, WrittenScenario written) {
    WrittenScenario.Field field = written.fieldOf(fault);
    Matcher meant = MEANT.matcher(fault.right());
    Matcher wrong = QUOTED.matcher(fault.found());
    boolean isMeant = meant.matches() && wrong.matches();
    return new Told(
        field.list(),
        field.row(),
        field.key(),
        fault.found() + "; " + fault.right() + (fault.about().isToFind() ? FINDS_IT : ""),
        fault.file().getFileName() + (fault.line() > 0 ? ", line " + fault.line() : ""),
        isMeant ? wrong.group(1) : "",
        isMeant ? meant.group(1) : "");
  }
}
