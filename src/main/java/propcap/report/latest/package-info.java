/** Until when to sow. */
@NullMarked
package propcap.report.latest;

import org.jspecify.annotations.NullMarked;
