/** The rows of a log and the trays that they speak of. */
@NullMarked
package propcap.files.log;

import org.jspecify.annotations.NullMarked;
