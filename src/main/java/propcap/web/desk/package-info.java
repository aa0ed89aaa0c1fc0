/** The scenario that was opened, what is changed in it and not saved, and its folder. */
@NullMarked
package propcap.web.desk;

import org.jspecify.annotations.NullMarked;
