package org.underlee.clash;

import org.underlee.geom.Vec3;

/**
 * How two bodies stand to each other.
 *
 * @param depth the least move that parts them; zero where they do not fill the same space
 * @param distance between the two; zero where they meet
 * @param measured whether the depth is exact, as of two convex bodies; else it is an estimate
 * @param at in the middle of what they share, or of the gap
 */
public record Contact(ClashKind kind, double depth, double distance, boolean measured, Vec3 at) {}
