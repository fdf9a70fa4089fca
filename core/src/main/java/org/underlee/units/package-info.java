/** SI inside; feet-inch-fraction and metric text at the edge. */
@NullMarked
package org.underlee.units;

import org.jspecify.annotations.NullMarked;
