package org.underlee.takeoff;

import java.util.OptionalDouble;
import org.underlee.finding.Place;

/**
 * Stock that need not be bought.
 *
 * @param item of the kit's stock
 * @param length metres, of what is sold by the length
 * @param place in the user's list, for messages
 */
public record OnHand(String item, OptionalDouble length, int count, Place place) {}
