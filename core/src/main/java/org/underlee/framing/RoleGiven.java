package org.underlee.framing;

/**
 * The role a member was given.
 *
 * @param confidence 0…1
 * @param why the evidence, in plain words
 */
public record RoleGiven(Member member, Role role, double confidence, String why) {}
