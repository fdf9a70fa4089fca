/** One writer per format. */
@NullMarked
package org.underlee.report;

import org.jspecify.annotations.NullMarked;
