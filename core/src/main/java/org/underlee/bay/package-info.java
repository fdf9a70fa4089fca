/** The clear spaces between joist lines, and what stands in them. */
@NullMarked
package org.underlee.bay;

import org.jspecify.annotations.NullMarked;
