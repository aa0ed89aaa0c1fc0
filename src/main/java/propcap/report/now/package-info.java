/** A season on a day within it. */
@NullMarked
package propcap.report.now;

import org.jspecify.annotations.NullMarked;
