package org.underlee.samples;

/**
 * One element of a sample.
 *
 * @param key its name within the sample, never written to the file; its GlobalId derives from it
 * @param group the field it belongs to, for assemblies
 * @param size as the trade says it: {@code 2x8}, {@code 60x160}
 * @param level index into the storeys of the sample
 * @param solid in the frame of the sample, millimetres
 */
public record Member(
    String key, Role role, String group, String size, String material, int level, Solid solid) {}
