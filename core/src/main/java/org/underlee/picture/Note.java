package org.underlee.picture;

import org.underlee.geom.Vec3;

/**
 * A short text at a place in space, drawn over everything on a small plate.
 *
 * @param height of its capitals, in pixels of the finished picture
 */
public record Note(Vec3 at, String text, double height) {}
