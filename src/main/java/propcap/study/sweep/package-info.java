/** Many scenarios one after another, read for the same numbers. */
@NullMarked
package propcap.study.sweep;

import org.jspecify.annotations.NullMarked;
