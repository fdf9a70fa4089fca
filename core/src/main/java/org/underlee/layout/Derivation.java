package org.underlee.layout;

import java.util.List;
import org.underlee.framing.BuildingElement;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * Where one number of a part comes from: what was measured in the model, the kit's values and the
 * rules applied to it one after the other, and the number that this gives.
 *
 * @param ordinal which of several of its kind, from 1: the second notch of a rail
 * @param steps the first sets a number, each further one changes it
 */
public record Derivation(Dimension dimension, int ordinal, List<Step> steps) {
  public Derivation {
    steps = List.copyOf(steps);
  }

  /** What a step does with the number so far. */
  public enum Op {
    IS(""),
    PLUS("+"),
    MINUS("-"),
    TIMES("x"),
    OVER("/"),
    /** The number so far is taken from the step's value. */
    TAKEN_FROM("taken from"),
    AT_MOST("at most"),
    AT_LEAST("at least");

    private final String sign;

    Op(String sign) {
      this.sign = sign;
    }

    public String sign() {
      return sign;
    }

    double apply(double soFar, double value) {
      return switch (this) {
        case IS -> value;
        case PLUS -> soFar + value;
        case MINUS -> soFar - value;
        case TIMES -> soFar * value;
        case OVER -> soFar / value;
        case TAKEN_FROM -> value - soFar;
        case AT_MOST -> Math.min(soFar, value);
        case AT_LEAST -> Math.max(soFar, value);
      };
    }
  }

  /** One step. */
  public record Step(Op op, Words what, Quantity value, Origin origin) {}

  /** Where the value of a step comes from. */
  public sealed interface Origin {}

  /** Measured on these elements of the model. */
  public record Measured(List<BuildingElement> elements) implements Origin {
    public Measured {
      elements = List.copyOf(elements);
    }
  }

  /** A value of the kit. */
  public record KitValue(String key, String source) implements Origin {}

  /** A rule of the trade or of this program. */
  public record Ruled(Words source) implements Origin {}

  /** The number, worked out again from the steps. */
  public double value() {
    return value(steps);
  }

  static double value(List<Step> steps) {
    double value = 0;
    for (Step step : steps) {
      value = step.op.apply(value, step.value.si());
    }
    return value;
  }

  public Quantity result() {
    return Quantity.of(dimension.kind(), value());
  }
}
