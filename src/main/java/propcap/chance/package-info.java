/** What luck decides: emergence, losses and the streams that fix them. */
@NullMarked
package propcap.chance;

import org.jspecify.annotations.NullMarked;
