package org.underlee.drainage;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.underlee.drainage.flow.RainData;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Survey;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.Mix;
import org.underlee.samples.SampleDecks;

/**
 * How long the proof alone takes, laid out once before. Prints milliseconds of the clock, the first
 * half of the rounds left out. Arguments: rounds, bays.
 */
public final class ProofSpeed {
  private ProofSpeed() {}

  public static void main(String[] args) {
    int bays = Integer.parseInt(args[1]);
    List<DrainCase> cases = cases(bays);
    double[] rounds = new double[Integer.parseInt(args[0])];
    for (int i = 0; i < rounds.length; i++) {
      long start = System.nanoTime();
      DrainProof proof = WaterProver.prove(cases);
      rounds[i] = (System.nanoTime() - start) / 1e6;
      if (proof.dryFraction() == 0) {
        throw new IllegalStateException("nothing is drained");
      }
    }
    double[] late = Arrays.copyOfRange(rounds, rounds.length / 2, rounds.length);
    Arrays.sort(late);
    System.out.printf(
        Locale.ROOT,
        "%d bays: least %.1f, quarter %.1f, half %.1f ms%n",
        bays,
        late[0],
        late[late.length / 4],
        late[late.length / 2]);
  }

  /** Laid out on joists of 3.6 m at 406 mm. */
  static List<DrainCase> cases(int bays) {
    Survey survey =
        DeckRun.survey(
            IfcEmitter.emit(SampleDecks.plain(3600, 406.4, bays + 1), Mix.PLAIN), "deck.ifc");
    return DrainCases.of(
        survey.bays(),
        DeckRun.layOut(
            survey,
            Scope.OUTSIDE,
            KitReader.builtIn(),
            RainData.builtIn().service(RainData.ANYWHERE)));
  }
}
