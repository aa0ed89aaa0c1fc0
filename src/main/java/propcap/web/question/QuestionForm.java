package propcap.web.question;

import java.util.List;

/**
 * A question as it stands on the page: what it asks, what is done to answer it, and its fields.
 *
 * @param name by which it is asked
 * @param findsWhatIsEmpty whether it may be asked where the sowing plan leaves dates or trays to be
 *     found
 */
record QuestionForm(
    String name, String title, String words, boolean findsWhatIsEmpty, List<Field> fields) {
  QuestionForm(String name, String title, String words, Field... fields) {
    this(name, title, words, false, List.of(fields));
  }

  /** The same of a question that finds what is empty. */
  QuestionForm findingWhatIsEmpty() {
    return new QuestionForm(name, title, words, true, fields);
  }

  /**
   * A field.
   *
   * @param value what stands in it at first; empty where that hangs on the plan
   * @param choices pairs of a value and its words; empty where anything may be written
   */
  record Field(String key, String label, String value, List<List<String>> choices) {
    Field(String key, String label, String value) {
      this(key, label, value, List.of());
    }

    Field(String key, String label, long value) {
      this(key, label, Long.toString(value));
    }
  }
}
