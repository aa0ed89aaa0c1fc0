/** Changes written into a grower's own texts, and new files. */
@NullMarked
package propcap.files.edit;

import org.jspecify.annotations.NullMarked;
