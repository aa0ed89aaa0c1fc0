/** The weeks’ work. */
@NullMarked
package propcap.report.work;

import org.jspecify.annotations.NullMarked;
