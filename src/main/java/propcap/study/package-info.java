/** Many seasons and the questions asked of them, with the error of each answer. */
@NullMarked
package propcap.study;

import org.jspecify.annotations.NullMarked;
