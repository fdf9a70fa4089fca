/** Vectors, transforms, meshes, extrusions, plan outlines and the one tolerance type. */
@NullMarked
package org.underlee.geom;

import org.jspecify.annotations.NullMarked;
