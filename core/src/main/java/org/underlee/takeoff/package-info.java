/** Quantities, cut list, stock plan and order list. */
@NullMarked
package org.underlee.takeoff;

import org.jspecify.annotations.NullMarked;
