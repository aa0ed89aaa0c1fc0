package propcap.report;

import propcap.report.kit.Templates;

/** The look of reports and answers, for a page that shows them beside other things. */
public final class Style {
  private Style() {}

  /** As a style sheet. */
  public static String css() {
    return Templates.fill("style.jte").replace("<style>", "").replace("</style>", "");
  }
}
