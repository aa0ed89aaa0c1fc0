/** The commands: parse, call, print. */
@NullMarked
package propcap.cli;

import org.jspecify.annotations.NullMarked;
