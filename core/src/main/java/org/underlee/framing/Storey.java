package org.underlee.framing;

/**
 * A storey of the building.
 *
 * @param elevation height of its placement in world metres
 */
public record Storey(String globalId, String name, double elevation) {}
