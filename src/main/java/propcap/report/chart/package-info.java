/** What charts are drawn with. */
@NullMarked
package propcap.report.chart;

import org.jspecify.annotations.NullMarked;
