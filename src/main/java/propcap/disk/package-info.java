/** What is written: whole or not at all, whenever the program ends. */
@NullMarked
package propcap.disk;

import org.jspecify.annotations.NullMarked;
