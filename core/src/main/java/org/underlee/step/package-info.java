/**
 * Part 21 bytes to an index of instances, decoded one at a time; and the splice that adds a block.
 */
@NullMarked
package org.underlee.step;

import org.jspecify.annotations.NullMarked;
