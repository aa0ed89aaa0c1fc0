/**
 * What a sample of seasons tells: means, differences, chances and the limits between which they
 * lie.
 */
@NullMarked
package propcap.study.statistics;

import org.jspecify.annotations.NullMarked;
