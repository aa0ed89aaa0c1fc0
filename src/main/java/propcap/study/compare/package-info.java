/** What alternatives change, on the same seasons. */
@NullMarked
package propcap.study.compare;

import org.jspecify.annotations.NullMarked;
