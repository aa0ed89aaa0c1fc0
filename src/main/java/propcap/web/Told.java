package propcap.web;

import propcap.files.Fault;
import propcap.files.WrittenScenario;

/**
 * A fault as the page shows it, at its field.
 *
 * @param list such as {@code places}; empty for the scenario's own keys
 * @param row which of the list; -1: none of them
 * @param key empty where it is about the whole row
 * @param where its file and line
 */
record Told(String list, int row, String key, String words, String where) {
  static Told of(Fault fault, WrittenScenario written) {
    WrittenScenario.Field field = written.fieldOf(fault);
    return new Told(
        field.list(),
        field.row(),
        field.key(),
        fault.found() + "; " + fault.right(),
        fault.file().getFileName() + (fault.line() > 0 ? ", line " + fault.line() : ""));
  }
}
