package org.underlee.run;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.underlee.check.Answer;
import org.underlee.check.CheckInput;
import org.underlee.check.Checks;
import org.underlee.drainage.DrainProof;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Mesh;
import org.underlee.ifc.IfcModel;
import org.underlee.kit.Kit;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;
import org.underlee.units.Words;

/**
 * The checks of a design, on an assembly as it stands in a model. What a part is for is known from
 * laying out again by what the model keeps of the design; where it is and how it falls is read.
 */
final class DesignChecks {
  private DesignChecks() {}

  /**
   * With what the checks say, and why deck is open that the design leaves open.
   *
   * @param drained the model with the assembly in it, which that of the survey leaves out
   * @param deck the one to look at; all when empty
   * @param given the kit, where it is one of the user's own
   * @param alone the survey without models of services: asked for when an assembly is not the one
   *     that would be laid out around them, as one is not that was designed before they came
   */
  static Checked of(
      IfcModel drained,
      Checked proved,
      Optional<String> deck,
      Optional<Kit> given,
      Supplier<Survey> alone) {
    try {
      Decisions decided = Decisions.in(drained);
      Again again = Again.of(proved, decided, decided.kit(given));
      if (!proved.survey().services().isEmpty() && !again.strange(deck).isEmpty()) {
        again = again.around(alone.get());
      }
      Set<String> strange = again.strange(deck);
      return strange.isEmpty()
          ? proved.with(
              again.checks(
                  proved.proof(),
                  proved.survey().elements(),
                  new SpoutSizes(drained, proved.parts())),
              OpenDeck.reasons(again.meant.findings()))
          : leftOut(
              proved,
              strange.size() + " parts, such as " + strange.iterator().next() + ", are not of it",
              "Name the models of services that it was laid out around by --services, or run"
                  + " resync, which lays the assembly out for the framing as it is now.");
    } catch (InputException unknown) {
      return leftOut(proved, String.valueOf(unknown.getMessage()), unknown.advice());
    }
  }

  /**
   * The design laid out again by what the model keeps of it.
   *
   * @param shapes of the parts that are there, by their names
   */
  private record Again(
      Survey survey, Decisions decided, Kit kit, Layout meant, Map<String, Mesh> shapes) {
    static Again of(Checked proved, Decisions decided, Kit kit) {
      Map<String, Mesh> shapes =
          proved.parts().stream()
              .collect(Collectors.toMap(WrittenPart::id, p -> p.element().shape(), (a, b) -> a));
      return of(proved.survey(), decided, kit, shapes);
    }

    private static Again of(Survey survey, Decisions decided, Kit kit, Map<String, Mesh> shapes) {
      Layout meant = DeckRun.layOut(survey, decided.scope(), kit, decided.storm());
      return new Again(survey, decided, kit, meant, shapes);
    }

    Again around(Survey other) {
      return of(other, decided, kit, shapes);
    }

    /** Parts that are there and that the design has not. */
    Set<String> strange(Optional<String> deck) {
      Set<String> strange = new TreeSet<>(shapes.keySet());
      deck.ifPresent(d -> strange.removeIf(id -> !id.startsWith(d + "/")));
      strange.removeAll(meant.parts().stream().map(Part::id).collect(Collectors.toSet()));
      return strange;
    }

    /**
     * By what is stated in the model; it is laid out by what the kit states.
     *
     * @param elements all that stands near, those of the services too: whether the assembly was
     *     laid out around a vent or a meter says nothing of the room that it needs
     */
    Answer checks(DrainProof proof, List<BuildingElement> elements, SpoutSizes stated) {
      Layout told = new Layout(stated.in(kit), meant.fields(), meant.findings());
      return Checks.of(
          CheckInput.asItStands(
                  survey.bays(), elements, told, decided.storm(), proof.outlets(), shapes)
              .with(decided.scope().wishes()));
    }
  }

  private static Checked leftOut(Checked proved, String why, String fix) {
    Words words = Words.of("the design that the model keeps could not be laid out again: %s.", why);
    Finding told = Finding.of(Rules.CHECKS_LEFT_OUT, Place.NOWHERE, words, fix);
    return proved.with(new Answer(List.of(told), List.of()), List.of());
  }
}
