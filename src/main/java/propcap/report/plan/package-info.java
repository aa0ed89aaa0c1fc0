/** A better plan. */
@NullMarked
package propcap.report.plan;

import org.jspecify.annotations.NullMarked;
