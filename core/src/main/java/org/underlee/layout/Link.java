package org.underlee.layout;

import org.underlee.geom.Vec3;

/**
 * Water goes from one part of the drain run into the next: gutter → outlet → downspout → elbow.
 *
 * @param from id of the part upstream
 * @param to id of the part downstream
 * @param at where it passes over, world metres
 */
public record Link(String from, String to, Vec3 at) {}
