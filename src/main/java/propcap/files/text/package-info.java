/** Texts on disk or not yet saved, as trees and tables, and the faults found in them. */
@NullMarked
package propcap.files.text;

import org.jspecify.annotations.NullMarked;
