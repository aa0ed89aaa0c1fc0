/** What comes of sowing earlier or later. */
@NullMarked
package propcap.report.shift;

import org.jspecify.annotations.NullMarked;
