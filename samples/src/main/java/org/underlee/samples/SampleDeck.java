package org.underlee.samples;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * An invented model: its members, how they are grouped into decks and fields, and the mix it is
 * published with.
 *
 * @param name of its folder and file
 * @param levels its storeys; {@link Member#level()} points here
 * @param decks the fields of each deck
 * @param ownMix how the committed file is written
 */
public record SampleDeck(
    String name,
    String description,
    List<Level> levels,
    List<Member> members,
    List<List<FieldPlan>> decks,
    Mix ownMix) {

  /**
   * A storey.
   *
   * @param elevation above height zero of the sample
   */
  public record Level(String name, double elevation) {}

  /** The GlobalId of a member or of another thing of this sample; the same in every mix. */
  public String globalId(String key) {
    return GlobalIds.of(name + "/" + key);
  }

  /** The GlobalId of a storey. */
  public String storeyId(int level) {
    return globalId("storey/" + level);
  }

  /** What a survey of the file written with {@code mix} should say. */
  public GroundTruth truth(Mix mix) {
    return new Truths(this, mix).all();
  }

  /** The frame of the sample in the world, millimetres. */
  public Frame world(Mix mix) {
    return Frame.turned(mix.offsetMetres().times(1000), mix.yawDegrees());
  }

  Optional<Member> member(String key) {
    return members.stream().filter(m -> m.key().equals(key)).findFirst();
  }

  /** Keys of the supports of a field in one role, in the order they were built. */
  static List<String> supports(Map<Role, List<String>> supports, Role role) {
    return supports.getOrDefault(role, List.of());
  }
}
