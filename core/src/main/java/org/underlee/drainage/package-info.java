/** Where the water of every part of a deck goes: proved on the shapes of the parts as they are. */
@NullMarked
package org.underlee.drainage;

import org.jspecify.annotations.NullMarked;
