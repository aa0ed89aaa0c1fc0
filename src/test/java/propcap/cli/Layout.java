package propcap.cli;

import java.util.List;
import java.util.Objects;
import org.openqa.selenium.chrome.ChromeDriver;

/** What a browser makes of a page that can't be read: cut, or too small. */
final class Layout {
  /** Sees to all that is shown, folded parts opened; arguments: the least size of type. */
  private static final String LOOK =
      """
      const least = arguments[0];
      const bad = new Set();
      const wide = document.documentElement.clientWidth;
      const say = (what, text) => bad.add(what + ': ' + text.trim().slice(0, 60));
      document.querySelectorAll('details').forEach((d) => { d.open = true; });
      if (document.documentElement.scrollWidth > wide) {
        say('wider than the screen', String(document.documentElement.scrollWidth));
      }
      for (const box of document.querySelectorAll('.wide, .chart')) {
        if (box.scrollWidth > box.clientWidth + 1) {
          say('to be scrolled sideways', box.getAttribute('aria-label') ?? box.textContent);
        }
      }
      const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      for (let node = walker.nextNode(); node; node = walker.nextNode()) {
        const element = node.parentElement;
        if (!node.data.trim() || ['title', 'STYLE'].includes(element.tagName) || !element.checkVisibility()) {
          continue;
        }
        const svg = element.closest('svg');
        const range = document.createRange();
        range.selectNodeContents(node);
        const at = svg ? element.getBoundingClientRect() : range.getBoundingClientRect();
        const edge = svg ? svg.getBoundingClientRect() : {left: 0, right: wide};
        if (at.left < edge.left - 1 || at.right > edge.right + 1 || (svg && (at.top < edge.top - 1 || at.bottom > edge.bottom + 2))) {
          say('cut', node.data);
        }
        const scale = svg ? Math.hypot(element.getScreenCTM().a, element.getScreenCTM().b) : 1;
        const size = parseFloat(getComputedStyle(element).fontSize) * scale;
        if (size < least - 0.05) {
          say('of ' + size.toFixed(1) + ' pixels', node.data);
        }
      }
      return [...bad];
      """;

  private Layout() {}

  /**
   * What of the page that is open is cut, must be scrolled sideways or is smaller than so many
   * pixels.
   */
  static List<String> faults(ChromeDriver page, double leastType) {
    List<?> said = (List<?>) Objects.requireNonNull(page.executeScript(LOOK, leastType));
    return said.stream().map(String::valueOf).toList();
  }
}
