/** What the commands share: options, how they read, how they end. */
@NullMarked
package propcap.cli.kit;

import org.jspecify.annotations.NullMarked;
