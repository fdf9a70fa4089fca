package org.underlee.kit;

/**
 * What sheet and fittings are made of.
 *
 * @param density kg/m³
 * @param colour red, green, blue in 0…255, for pictures and model styles
 */
public record Material(
    String id, String name, double density, int red, int green, int blue, String source) {}
