/** What every answer is told with: words, numbers, tables, pages. */
@NullMarked
package propcap.report.kit;

import org.jspecify.annotations.NullMarked;
