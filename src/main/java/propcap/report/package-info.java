/** What a forecast says, as files that a grower reads and as files that other programs read. */
@NullMarked
package propcap.report;

import org.jspecify.annotations.NullMarked;
