package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.run.*;
import org.underlee.samples.*;

class ScratchTest {
  @Test
  void look() {
    java.util.List<SampleDeck> decks = new java.util.ArrayList<>(SampleDecks.all());
    decks.add(SampleDecks.plain(2438.4, 406.4, 5));
    for (SampleDeck deck : decks) {
      Design d =
          DeckRun.design(
              DeckRun.survey(IfcEmitter.emit(deck, Mix.PLAIN), "deck.ifc"),
              Scope.OUTSIDE,
              KitReader.builtIn());
      long t = System.nanoTime();
      DrainProof p = WaterProver.prove(DrainCases.of(d.survey().bays(), d.layout()));
      System.out.printf(
          "%s: area %.4f dry %.5f  %d ms%n",
          deck.name(), p.area(), p.dryFraction(), (System.nanoTime() - t) / 1000000);
      java.util.Map<String, double[]> sums = new java.util.TreeMap<>();
      for (Leak l : p.leaks()) {
        String k =
            l.cause()
                + " "
                + l.parts().stream()
                    .map(
                        x ->
                            x.replaceAll("B\\d+", "B")
                                .replaceAll("-\\d+$", "")
                                .replaceAll("J\\d+", "J"))
                    .toList();
        double[] s = sums.computeIfAbsent(k, x -> new double[2]);
        s[0] += l.area();
        s[1]++;
      }
      sums.forEach((k, s) -> System.out.printf("   %-60s %.5f m2 in %d%n", k, s[0], (int) s[1]));
      p.leaks().stream()
          .filter(l -> !l.cause().isOpenDeck())
          .filter(l -> l.field().startsWith("deck-2") && l.area() > 0.002)
          .forEach(
              l -> {
                var f =
                    d.survey().bays().stream()
                        .filter(b -> b.field().id().equals(l.field()))
                        .findFirst()
                        .get();
                double[] e = {9, -9, 9, -9};
                l.regions()
                    .forEach(
                        r ->
                            r.forEach(
                                q -> {
                                  var w = f.field().frame().toLocal(q);
                                  e[0] = Math.min(e[0], w.x());
                                  e[1] = Math.max(e[1], w.x());
                                  e[2] = Math.min(e[2], w.y());
                                  e[3] = Math.max(e[3], w.y());
                                }));
                System.out.printf(
                    "     %s %s %s at %s area %.5f over u %.4f..%.4f v %.4f..%.4f%n",
                    l.cause(),
                    l.bay(),
                    l.parts(),
                    f.field().frame().toLocal(l.at()),
                    l.area(),
                    e[0],
                    e[1],
                    e[2],
                    e[3]);
              });
      p.outlets().forEach(o -> System.out.println("   " + o));
      p.ponds().stream().limit(3).forEach(o -> System.out.println("   POND " + o));
      p.blocked()
          .forEach(
              o -> {
                var f =
                    d.survey().bays().stream()
                        .filter(b -> o.part().startsWith(b.field().id()))
                        .findFirst()
                        .get();
                System.out.println(
                    "   BLOCKED "
                        + o.depth()
                        + " spills "
                        + f.field().frame().toLocal(o.spillsAt())
                        + " to "
                        + o.spillsTo()
                        + " kg "
                        + o.mass());
              });
      System.out.println("   flat " + p.flat());
    }
    assertThat(1).isEqualTo(1);
  }
}
