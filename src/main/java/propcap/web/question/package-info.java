/** What is simulated for the page: the forecast beside the plan, and what is asked. */
@NullMarked
package propcap.web.question;

import org.jspecify.annotations.NullMarked;
