package org.underlee.picture;

import java.util.List;

/**
 * A scene of a deck together with what each of its shapes stands for: what is picked at a pixel
 * with id {@code n} is subject {@code n - 1}.
 */
public record DeckPicture(Scene scene, List<Subject> subjects) {
  public DeckPicture {
    subjects = List.copyOf(subjects);
  }

  /**
   * What a shape stands for.
   *
   * @param id of a part, or the GlobalId of an element of the model
   */
  public record Subject(String id, Family family) {
    public boolean isPart() {
      return family.ours;
    }
  }

  /** What is shown and hidden together. */
  public enum Family {
    FRAMING("Framing", false),
    SURROUNDINGS("Surroundings", false),
    SERVICES("Services", false),
    PANS("Pans and strips", true),
    RAILS("Rails", true),
    GUTTER("Gutter and downspouts", true),
    SUNDRIES("Hangers, straps, tape", true);

    private final String words;
    private final boolean ours;

    Family(String words, boolean ours) {
      this.words = words;
      this.ours = ours;
    }

    public String words() {
      return words;
    }
  }

  /** What a picked id stands for. */
  public Subject subject(int pickedId) {
    return subjects.get(pickedId - 1);
  }
}
