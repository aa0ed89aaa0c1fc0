/** When the last frost comes. */
@NullMarked
package propcap.report.frost;

import org.jspecify.annotations.NullMarked;
