package org.underlee.finding;

/** An element that could not be measured, and why. Never silently zero or absent. */
public record NotMeasured(String globalId, Place place, String why) {}
