/** Forecasts of a season beside what came of it. */
@NullMarked
package propcap.study.review;

import org.jspecify.annotations.NullMarked;
