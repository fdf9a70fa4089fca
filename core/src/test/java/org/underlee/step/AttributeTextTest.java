package org.underlee.step;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.underlee.finding.InputException;

/** Attributes decoded one by one against the whole instance decoded at once. */
class AttributeTextTest {
  private static final int MUTANTS = 300;
  private static final int INSTANCES = 400;

  /** What is given or refused, so that both can be compared. */
  private static String outcome(Supplier<Object> accessor) {
    try {
      return String.valueOf(accessor.get());
    } catch (InputException e) {
      return e.getMessage() + e.advice() + e.place();
    }
  }

  private static List<String> outcomes(StepInstance instance) {
    List<String> all = new ArrayList<>();
    for (int i = 0; i <= instance.size(); i++) {
      int at = i;
      all.add(outcome(() -> instance.isOmitted(at)));
      all.add(outcome(() -> instance.isReference(at)));
      all.add(outcome(() -> instance.optionalRef(at)));
      all.add(outcome(() -> Arrays.toString(instance.refs(at))));
      all.add(outcome(() -> instance.optionalText(at)));
      all.add(outcome(() -> instance.optionalNumber(at)));
      all.add(outcome(() -> Arrays.toString(instance.numbers(at))));
      all.add(outcome(() -> Arrays.deepToString(instance.numberRows(at))));
      all.add(outcome(() -> instance.value(at)));
    }
    return all;
  }

  private static Optional<StepFile> read(byte[] model) {
    try {
      return Optional.of(StepFile.of(model, "mutant.ifc"));
    } catch (InputException e) {
      return Optional.empty();
    }
  }

  @Test
  void whatIsAskedForAloneIsWhatTheWholeInstanceHoldsAlsoInDamagedText() throws IOException {
    Fuzz fuzz =
        new Fuzz(Fuzz.smallModels(Path.of(System.getProperty("underlee.root")).resolve("samples")));
    int compared = 0;
    for (int seed = 0; seed < MUTANTS; seed++) {
      StepFile file = read(fuzz.mutant(seed)).orElse(null);
      int count = file == null ? 0 : file.count();
      for (int i = seed % 7; i < count; i += 1 + count / INSTANCES) {
        int at = i;
        StepFile model = file;
        assertThat(outcome(() -> outcomes(model.decode(at))))
            .as("seed %s, instance %s", seed, at)
            .isEqualTo(outcome(() -> outcomes(model.parsed(at))));
        compared++;
      }
    }
    assertThat(compared).isGreaterThan(15_000);
  }

  @Test
  void oddTextIsReadAsTheWholeInstanceIs() {
    for (String values :
        List.of(
            "((1.,2.),(3.,4.))",
            "( ( 1. , 2.E1 ) , ( ) , (3.,-4.e2) )",
            "(#2,#3),( #2 , #3 ),()",
            "'a''b','(#1)','\\X2\\00E9\\X0\\'",
            "(.E.,.T.),.T.,IFCLABEL('x'),IFCSET((1,2))",
            "1234567890123456789.5,-0.,.5E1,+1.,1.E-05,1E400",
            "(#2,'x)'),(1.,$),(1,'a,b,c)')",
            "/* between */ 1.,\"0F\",*,$")) {
      StepFile file = StepTexts.data("#1=IFCWALL(" + values + ");", "#2=IFCDOOR('d');");
      assertThat(outcome(() -> outcomes(file.decode(0))))
          .as(values)
          .isEqualTo(outcome(() -> outcomes(file.parsed(0))));
    }
  }
}
