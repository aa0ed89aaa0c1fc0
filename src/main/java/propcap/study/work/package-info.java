/** What is to be done on which day, and how long it takes. */
@NullMarked
package propcap.study.work;

import org.jspecify.annotations.NullMarked;
