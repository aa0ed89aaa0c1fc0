/** How large a place must be for a goal, and what to order for it. */
@NullMarked
package propcap.study.size;

import org.jspecify.annotations.NullMarked;
