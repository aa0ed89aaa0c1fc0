package propcap.web;

import propcap.files.scenario.WrittenScenario;
import propcap.files.text.Fault;
import propcap.files.text.Right;
import propcap.web.question.Questions;

/**
 * A fault as the page shows it, at its field.
 *
 * @param list such as {@code places}; empty for the scenario's own keys
 * @param row which of the list; -1: none of them
 * @param key empty where it is about the whole row
 * @param file that it stands in
 * @param where that file and the line
 * @param wrong the word that a known one is like; empty where none is
 * @param meant that known word
 */
record FieldFault(
    String list,
    int row,
    String key,
    String words,
    String file,
    String where,
    String wrong,
    String meant) {
  /** Where the page's own questions find what is left empty. */
  private static final String FINDS_IT =
      "; or leave it empty, and under Questions “" + Questions.title("plan") + "” finds it";

  static FieldFault of(Fault fault, WrittenScenario written) {
    WrittenScenario.Field field = written.fieldOf(fault);
    String file = String.valueOf(fault.file().getFileName());
    Right.Slip slip = fault.about().slip();
    return new FieldFault(
        field.list(),
        field.row(),
        field.key(),
        fault.found() + "; " + fault.right() + (fault.about().isToFind() ? FINDS_IT : ""),
        file,
        file + (fault.line() > 0 ? ", line " + fault.line() : ""),
        slip == null ? "" : slip.written(),
        slip == null ? "" : slip.known());
  }
}
