/** What comes of a plan. */
@NullMarked
package propcap.report.forecast;

import org.jspecify.annotations.NullMarked;
