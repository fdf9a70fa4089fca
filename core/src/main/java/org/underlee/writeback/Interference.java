package org.underlee.writeback;

/**
 * A part and an element of the designer's that are in each other's way.
 *
 * @param part id of the part
 * @param instance of the element in the designer's file
 * @param globalId of that element
 * @param type what it is called: {@code intersect}
 */
public record Interference(String part, long instance, String globalId, String type) {}
