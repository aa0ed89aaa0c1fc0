/** The commands that ask a question of scenarios; the springs answer it. */
@NullMarked
package propcap.cli.question;

import org.jspecify.annotations.NullMarked;
