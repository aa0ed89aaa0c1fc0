package propcap.report.kit;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.Map;
import java.util.regex.Pattern;

/** The pages' templates, compiled with the program. */
public final class Templates {
  private static final Pattern LOOSE_PERCENT = Pattern.compile("(?<=\\d) %");

  /** A name with its number, in what is read and not in a tag, a drawing or the page's head. */
  private static final Pattern NUMBERED =
      Pattern.compile(
          "(?<![\\p{L}\\p{N}&;-])(\\p{L}[\\p{L}\\p{N}-]{0,30}-\\d{1,4}(?![\\p{L}\\p{N}-])[,.;:]?)"
              + "(?=[^<>]*<(?!/(?:text|tspan|title|style|script|option)))");

  private static final TemplateEngine ENGINE =
      TemplateEngine.createPrecompiled(
          null, ContentType.Html, Templates.class.getClassLoader(), "propcap.report.pages");

  private Templates() {}

  /** A page as one HTML file that needs no other. */
  public static String fill(String template, Object page) {
    StringOutput out = new StringOutput();
    ENGINE.render(template, page, out);
    return out.toString();
  }

  /** A piece that takes nothing to fill in. */
  public static String fill(String template) {
    StringOutput out = new StringOutput();
    ENGINE.render(template, Map.of(), out);
    return out.toString();
  }

  /**
   * A line's end would part a number from its error, from its %, or from the name that it belongs
   * to, such as {@code zinnia-2}.
   */
  public static String withoutLooseErrors(String html) {
    String whole =
        LOOSE_PERCENT.matcher(html.replace(" ± ", "\u00a0±\u00a0")).replaceAll("\u00a0%");
    return NUMBERED.matcher(whole).replaceAll("<span class=\"kept\">$1</span>");
  }
}
