package propcap.report;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;

/** The pages' templates, compiled with the program. */
final class Templates {
  private static final TemplateEngine ENGINE =
      TemplateEngine.createPrecompiled(
          null, ContentType.Html, Templates.class.getClassLoader(), "propcap.report.pages");

  private Templates() {}

  /** A page as one HTML file that needs no other. */
  static String fill(String template, Object page) {
    StringOutput out = new StringOutput();
    ENGINE.render(template, page, out);
    return out.toString();
  }
}
