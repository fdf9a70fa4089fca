package org.underlee.panel.model;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.underlee.clash.Tracked;
import org.underlee.clash.WayOut;
import org.underlee.units.Lengths.UnitSystem;

/**
 * A clash with one thing, or one run of things, as a person goes through them.
 *
 * @param key what accepting it is remembered by
 * @param state {@code new}, {@code open}, {@code accepted} or {@code gone}
 * @param cause why it is an issue: {@code intersect}, {@code too-near} and so on
 * @param accepted the reason it was accepted for
 * @param places the parts and the things that meet
 */
public record ServiceIssue(
    String key,
    String state,
    String cause,
    String title,
    Optional<String> accepted,
    Set<Item> places,
    List<Way> ways) {
  private static final String KEY = "clash ";

  /** A way out, in words, and what it makes of the decisions where the panel can do it. */
  public record Way(String words, Optional<Decisions> decisions) {}

  public ServiceIssue {
    places = Set.copyOf(places);
    ways = List.copyOf(ways);
  }

  /** What accepting an issue is remembered by. */
  static String key(Tracked issue) {
    return KEY + issue.id();
  }

  static ServiceIssue of(Tracked issue, Decisions now, Names names, UnitSystem units) {
    String key = key(issue);
    Optional<String> reason = Optional.ofNullable(now.accepted().get(key)).map(Acceptance::reason);
    return new ServiceIssue(
        key,
        reason.isPresent() ? Tracked.Status.ACCEPTED.word() : issue.status().word(),
        issue.cause().word(),
        names.inText(issue.issue().map(i -> i.words().in(units)).orElse(issue.title())),
        reason,
        places(issue),
        issue.ways().stream().map(w -> way(w, now, names, units)).toList());
  }

  private static Way way(WayOut way, Decisions now, Names names, UnitSystem units) {
    return new Way(
        names.inText(way.words().in(units)),
        way.options().isEmpty()
            ? Optional.empty()
            : FindingList.fixed(now, way.options()).filter(d -> !d.equals(now)));
  }

  private static Set<Item> places(Tracked issue) {
    Set<Item> places = new LinkedHashSet<>();
    issue.issue().stream()
        .flatMap(i -> i.clashes().stream())
        .flatMap(
            c ->
                Stream.of(
                    new Item.OfPart(c.part().id()),
                    new Item.OfElement(c.thing().element().globalId())))
        .forEach(places::add);
    return places;
  }
}
