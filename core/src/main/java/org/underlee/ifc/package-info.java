/** From a Part 21 index to building elements in metres with solids. */
@NullMarked
package org.underlee.ifc;

import org.jspecify.annotations.NullMarked;
