/** The folder of an answer: which files are its own, and how it is known again. */
@NullMarked
package propcap.results;

import org.jspecify.annotations.NullMarked;
