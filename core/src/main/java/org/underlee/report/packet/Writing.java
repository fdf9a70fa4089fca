package org.underlee.report.packet;

import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Shares;

/**
 * Writes numbers and phrases for one reader: the units of the tape, the language of the crew. What
 * findings and rules say is in English where {@link Phrasebook} does not know it.
 */
public final class Writing {
  /** The languages that phrases are there in. */
  public static final List<String> LANGUAGES = List.of("en", "es");

  private static final double SQUARE_FOOT = Lengths.FOOT * Lengths.FOOT;

  /** One US gallon is 231 cubic inches. */
  private static final double GALLON = 231 * Lengths.INCH * Lengths.INCH * Lengths.INCH;

  private static final double LITRE = 0.001;

  /** A fall in whole sixteenths of an inch in a foot is said so too. */
  private static final double SIXTEENTH_IN_A_FOOT = 1.0 / (12 * 16);

  private static final double EXACT = 1e-6;

  /** Keeps a number and its unit on one line. */
  private static final char NO_BREAK = '\u00a0';

  private final UnitSystem units;
  private final Locale locale;
  private final ResourceBundle phrases;
  private final Phrasebook said;

  /**
   * @throws IllegalArgumentException when there are no phrases in the language
   */
  public Writing(UnitSystem units, String language) {
    if (!LANGUAGES.contains(language)) {
      throw new IllegalArgumentException(
          "no phrases in \"" + language + "\"; there are " + String.join(", ", LANGUAGES));
    }
    this.units = units;
    this.locale = Locale.forLanguageTag(language);
    this.said = Phrasebook.of(language);
    this.phrases =
        ResourceBundle.getBundle(
            "org.underlee.report.packet.phrases",
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  public UnitSystem units() {
    return units;
  }

  public String language() {
    return locale.toLanguageTag();
  }

  public boolean isMetric() {
    return units == UnitSystem.METRIC;
  }

  /**
   * A phrase with its parts in place of {@code {0}}, {@code {1}}.
   *
   * @throws MissingResourceException when there is no such phrase
   */
  public String say(String key, Object... parts) {
    String text = phrases.getString(key);
    for (int i = 0; i < parts.length; i++) {
      text = text.replace("{" + i + "}", parts[i].toString());
    }
    return text;
  }

  /** What a finding or a question says, in this language where the phrase is known in it. */
  public String translated(String english) {
    return said.say(english);
  }

  /** A sentence with its measures in the words of this language: {@code 24,3 pies²}. */
  public String measures(String told) {
    return language().equals(Locale.ENGLISH.getLanguage()) ? told : MeasureWords.of(this, told);
  }

  /** As marked on a tape: whole millimetres, or feet, inches and sixteenths. */
  public String length(double metres) {
    return Lengths.format(metres, units).replace(' ', NO_BREAK);
  }

  /** A length to cut, as marked on a tape: rounded down, so that the piece fits. */
  public String cut(double metres) {
    return Lengths.cut(metres, units).replace(' ', NO_BREAK);
  }

  /** {@code 1:96}, with its inches in a foot where they are told so. */
  public String fall(double dropPerRun) {
    double run = 1 / dropPerRun;
    boolean whole = Math.abs(run - Math.rint(run)) < 0.05;
    String ratio = "1:" + number(run, whole ? 0 : 1);
    double sixteenths = dropPerRun / SIXTEENTH_IN_A_FOOT;
    boolean told = !isMetric() && Math.abs(sixteenths - Math.rint(sixteenths)) < EXACT;
    return told
        ? ratio + " (" + say("unit.perFoot", Lengths.feetInches(dropPerRun * Lengths.FOOT)) + ")"
        : ratio;
  }

  public String area(double squareMetres) {
    return isMetric()
        ? number(squareMetres, 2) + " m²"
        : number(squareMetres / SQUARE_FOOT, 1) + " " + say("unit.squareFeet");
  }

  /** Litres, or US gallons. */
  public String volume(double cubicMetres) {
    return isMetric()
        ? number(cubicMetres / LITRE, 1) + " L"
        : number(cubicMetres / GALLON, 1) + " " + say("unit.gallons");
  }

  public String percent(double share) {
    return number(Shares.percent(share, 1), 1) + " %";
  }

  /** With the decimal sign of the language, and no sign between thousands. */
  public String number(double value, int decimals) {
    DecimalFormat format =
        new DecimalFormat(
            decimals == 0 ? "0" : "0." + "0".repeat(decimals),
            DecimalFormatSymbols.getInstance(locale));
    String text = format.format(value);
    boolean minusZero = text.startsWith("-") && text.chars().noneMatch(c -> c >= '1' && c <= '9');
    return minusZero ? text.substring(1) : text;
  }
}
