/** What it changes to sow earlier or later. */
@NullMarked
package propcap.study.shift;

import org.jspecify.annotations.NullMarked;
