/** What alternatives would change. */
@NullMarked
package propcap.report.compare;

import org.jspecify.annotations.NullMarked;
