package org.underlee.layout;

/**
 * The user's own tables of what gutters and downspouts carry, as they are written: the model keeps
 * them whole, so that it can be checked where the file is not.
 *
 * @param file its name, for messages
 * @param text JSON, as {@code docs/reference/own-capacities.schema.json} says
 */
public record OwnTables(String file, String text) {}
