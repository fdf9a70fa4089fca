package org.underlee.layout;

import java.util.List;
import java.util.Optional;
import org.underlee.finding.Finding;
import org.underlee.finding.Fix;
import org.underlee.finding.Place;
import org.underlee.framing.Deck;
import org.underlee.framing.Framing;
import org.underlee.framing.Role;
import org.underlee.framing.RoleGiven;
import org.underlee.kit.Family;
import org.underlee.kit.Kit;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * Whether boards keep a kit from being laid: a drape goes over the joist tops. A model shows the
 * deck as it will be, so it does not tell whether its boards lie there yet: the user must.
 */
record Boards(Framing framing, Kit kit, Wishes wishes) {

  boolean inTheWay(Deck deck) {
    return kit.family() == Family.DRAPE && !wishes.boardsOff() && !on(deck).isEmpty();
  }

  Optional<Finding> finding(Deck deck) {
    if (kit.family() != Family.DRAPE) {
      return Optional.empty();
    }
    if (!inTheWay(deck)) {
      return Optional.of(
          Finding.of(
              LayoutRules.BOARDS_TAKEN_OFF,
              Place.NOWHERE,
              deck.id()
                  + (wishes.boardsOff()
                      ? ": its boards are off or not yet laid, as you said."
                      : ": the model has no boards on it, so that they are taken not to be laid."),
              "Lay the membranes before the boards; a laid deck must have its boards taken up."));
    }
    List<RoleGiven> boards = on(deck);
    return Optional.of(
        Finding.of(
            LayoutRules.BOARDS_ON,
            boards.get(0).member().element().place(),
            Words.of(
                "%s: the model has %s boards on the joists that kit %s covers with membranes; it"
                    + " is left as it is.",
                deck.id(), Quantity.count(boards.size()), kit.id()),
            Fix.with(
                Words.plain(
                    "Say that the boards are off or not yet laid, or choose a kit that is hung from"
                        + " below."),
                new Fix.Action(
                    List.of(new Fix.Option("--boards-off", "")),
                    Words.plain("membranes are laid over the joists, below the boards")))));
  }

  private List<RoleGiven> on(Deck deck) {
    return framing.roles().stream()
        .filter(r -> r.role() == Role.DECK_BOARD && r.decks().contains(deck.id()))
        .toList();
  }
}
