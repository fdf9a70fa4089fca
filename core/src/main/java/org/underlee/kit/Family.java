package org.underlee.kit;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** How an assembly catches the water. Each family has numbers and stock of its own. */
public enum Family {
  /** Sheet pans on side rails, one in each bay. */
  PANS,
  /** A membrane trough in each bay, hung from the joist tops. */
  DRAPE,
  /** Overlapping ribbed sheets on battens below all joists. */
  SHEET;

  /** The word used in kit files: {@code pans}. */
  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }

  /** What catches the water, in the trade's word: {@code pan}. */
  public String piece() {
    return switch (this) {
      case PANS -> "pan";
      case DRAPE -> "trough";
      case SHEET -> "sheet";
    };
  }

  /** Id of the item that the flashing behind the gutter is cut from. */
  String flashing() {
    return switch (this) {
      case PANS -> Items.STRIP_SHEET;
      case DRAPE -> Items.CAP_STRIP;
      case SHEET -> Items.FLASHING_SHEET;
    };
  }

  /** Every number that a kit of this family states: those of the drain run, then its own. */
  public List<KitNumber> numbers() {
    List<? extends KitNumber> own =
        switch (this) {
          case PANS -> List.of(PanValue.values());
          case DRAPE -> List.of(DrapeValue.values());
          case SHEET -> List.of(SheetValue.values());
        };
    return Stream.concat(Stream.<KitNumber>of(DrainValue.values()), own.stream()).toList();
  }

  /** Ids of the stock items that a kit of this family offers: its own, then the drain run's. */
  public List<String> items() {
    List<String> own =
        switch (this) {
          case PANS -> Items.OF_PANS;
          case DRAPE -> Items.OF_DRAPE;
          case SHEET -> Items.OF_SHEET;
        };
    return Stream.concat(own.stream(), Items.OF_DRAIN.stream()).toList();
  }

  Optional<KitNumber> number(String key) {
    return numbers().stream().filter(n -> n.key().equals(key)).findFirst();
  }

  static Optional<Family> named(String word) {
    return Arrays.stream(values()).filter(f -> f.word().equals(word)).findFirst();
  }

  /** The words of all families, for messages. */
  static String words() {
    return String.join(", ", Arrays.stream(values()).map(Family::word).toList());
  }
}
