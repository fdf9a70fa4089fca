package org.underlee.layout;

/**
 * One bound on the seat height at the high end.
 *
 * @param height metres above the joist bottom at the field's high end
 * @param why what sets it, in words
 */
record SeatLimit(double height, String why) {}
