package propcap.farm;

import java.util.Locale;

/** One of a fixed list of things, which files and reports call by a word. */
public interface Worded {
  /** The constant's name in Java. */
  String name();

  /** The word in files and reports, such as {@code pot-on}. */
  default String word() {
    return word(name());
  }

  /** The word for a constant of such a name. */
  static String word(String name) {
    return name.toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
