package org.underlee.samples;

import java.util.List;

/**
 * One joist line of a field as it was described. The faces are positions along u at the high and
 * the low end; between them they run straight.
 *
 * @param plies keys of the members in order along u
 * @param width over all plies, square to the joist
 */
record JoistLine(
    String id,
    List<String> plies,
    double width,
    double depth,
    double firstFaceHigh,
    double firstFaceLow,
    double lastFaceHigh,
    double lastFaceLow) {}
