package org.underlee.drainage;

/**
 * Rain of another area that comes down at a place of the deck.
 *
 * @param area whose rain it is, m²
 * @param u its place down the fall, in the frame of the case; v across
 */
public record Arrival(double area, double u, double v) {}
