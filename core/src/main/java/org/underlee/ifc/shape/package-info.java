/**
 * Shapes of IFC representation items as triangle meshes, in the units of the file. {@code
 * ShapeReader} knows which class reads which entity; each other class is one kind of geometry.
 */
@NullMarked
package org.underlee.ifc.shape;

import org.jspecify.annotations.NullMarked;
