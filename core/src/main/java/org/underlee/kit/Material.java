package org.underlee.kit;

/**
 * What sheet and fittings are made of.
 *
 * @param density kg/m³
 * @param red 0…255, for pictures and model styles; likewise green and blue
 */
public record Material(
    String id, String name, double density, int red, int green, int blue, String source) {}
