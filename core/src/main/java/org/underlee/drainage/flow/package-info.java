/** How much water comes and what carries it away: numbers in, numbers out. */
@NullMarked
package org.underlee.drainage.flow;

import org.jspecify.annotations.NullMarked;
