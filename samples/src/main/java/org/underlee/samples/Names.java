package org.underlee.samples;

/** What a member is called in the file. */
final class Names {
  private Names() {}

  /** Its name, or {@code $}. */
  static Object of(Member member, Mix.Naming naming) {
    return switch (naming) {
      case NONE -> StepFile.NONE;
      case ENGLISH -> english(member.role()) + " " + member.size();
      case GERMAN -> german(member.role()) + " " + member.size();
    };
  }

  private static String english(Role role) {
    return switch (role) {
      case JOIST -> "Joist";
      case LEDGER -> "Ledger";
      case RIM -> "Rim joist";
      case BEAM -> "Beam";
      case POST -> "Post";
      case BLOCKING -> "Blocking";
      case DECK_BOARD -> "Deck board";
      case GUARD -> "Guard";
      case TREAD -> "Step";
      case WALL -> "House wall";
      case SLAB -> "Foundation slab";
      case FOOTING -> "Pad footing";
      case PIPE -> "Pipe";
    };
  }

  private static String german(Role role) {
    return switch (role) {
      case JOIST -> "Deckbalken";
      case LEDGER -> "Wandträger";
      case RIM -> "Randbohle";
      case BEAM -> "Unterzug";
      case POST -> "Stütze";
      case BLOCKING -> "Füllholz";
      case DECK_BOARD -> "Diele";
      case GUARD -> "Geländer";
      case TREAD -> "Stufe";
      case WALL -> "Außenwand";
      case SLAB -> "Bodenplatte";
      case FOOTING -> "Einzelfundament";
      case PIPE -> "Rohr";
    };
  }
}
