package org.underlee.run;

import org.underlee.bay.FieldBays;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.layout.Onto;

/** Reads what a user says of roofs that drain onto a deck. */
public final class RainFromRoofs {
  private RainFromRoofs() {}

  /**
   * What a text says.
   *
   * @param text such as {@code 12m2@3.2,1.5}
   * @throws InputException when it cannot be read, or no deck of the model is under the place
   */
  public static Onto on(Survey survey, String text) {
    Onto onto = Onto.parse(text);
    if (!isOnDeck(survey, onto)) {
      throw new InputException(
          Place.NOWHERE,
          "there is no deck at the place of \"" + text + "\"",
          "The place is X,Y in metres in the model's coordinates; survey tells where the decks are.");
    }
    return onto;
  }

  static boolean isOnDeck(Survey survey, Onto onto) {
    return survey.bays().stream().map(FieldBays::field).anyMatch(onto::isOn);
  }
}
