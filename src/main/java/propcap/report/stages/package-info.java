/** What a log of trays tells. */
@NullMarked
package propcap.report.stages;

import org.jspecify.annotations.NullMarked;
