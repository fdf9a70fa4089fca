package org.underlee.clash;

import org.underlee.geom.Vec3;

/**
 * One part and one thing that are in each other's way.
 *
 * @param amount metres: how deep, how near, or how far into the zone
 * @param limit metres that should be kept; zero where nothing may be shared
 * @param measured whether the amount is exact
 */
public record Clash(
    Ours part, Theirs thing, Cause cause, double amount, double limit, boolean measured, Vec3 at) {}
