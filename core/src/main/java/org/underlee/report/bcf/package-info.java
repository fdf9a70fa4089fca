/** Issues as BCF (BIM Collaboration Format) 2.1 and 3.0: written, and read back. */
@NullMarked
package org.underlee.report.bcf;

import org.jspecify.annotations.NullMarked;
