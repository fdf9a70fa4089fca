package org.underlee.drainage;

import java.util.Map;

/**
 * The deck area that one outlet drains.
 *
 * @param outlet the part's id
 * @param area m²
 * @param bays area of each bay in it, m²
 * @param gutters area that comes through each gutter piece, m²
 */
public record OutletShare(
    String outlet, double area, Map<String, Double> bays, Map<String, Double> gutters) {}
