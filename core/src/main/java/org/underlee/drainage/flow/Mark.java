package org.underlee.drainage.flow;

import com.fasterxml.jackson.annotation.JsonProperty;

/** How far a number of a table can be trusted. Shown wherever the number is shown. */
public enum Mark {
  /** Read in the source that is named. */
  @JsonProperty("seen")
  SEEN("seen"),
  /** Known without the source at hand. */
  @JsonProperty("from memory")
  FROM_MEMORY("from memory — verify"),
  /** Worked out from the formula that is named. */
  @JsonProperty("derived")
  DERIVED("derived"),
  /** Common practice without one source. */
  @JsonProperty("practice")
  PRACTICE("common practice"),
  /** The user's own. */
  @JsonProperty("given")
  GIVEN("given");

  private final String words;

  Mark(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
