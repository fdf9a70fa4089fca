package org.underlee.run;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.underlee.bay.FieldBays;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.layout.OutletWishes;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;

/**
 * What was decided for the old assembly, in the names that a survey of the new export counts out:
 * decided again there, it gives the assembly that a resync gives, but for names kept.
 *
 * @param kit its name
 * @param runPerFall of the pans, where it is not the kit's own
 * @param rain as the user named it, where it is not the usual one
 * @param scope the deck or storey that was asked for, and what was fixed about it
 * @param roles what elements of the new export are said to be, as {@link Overrides#said}
 * @param bothWays fields of the new export that fall both ways, by the name that a survey gives, as
 *     {@link HighLineAsked#text}
 */
public record Redecided(
    String kit,
    OptionalDouble runPerFall,
    Optional<String> rain,
    Scope scope,
    Map<String, String> roles,
    Set<String> bothWays) {
  public Redecided {
    roles = Map.copyOf(roles);
    bothWays = Set.copyOf(bothWays);
  }

  /**
   * @param named the new export's bays with the names that were kept
   * @param counted the same in the same order, as they are counted out
   */
  static Redecided of(
      Decisions then,
      Kit kit,
      List<FieldBays> named,
      List<FieldBays> counted,
      Optional<Overrides> told) {
    Map<String, String> names = names(named, counted);
    Wishes wishes = then.scope().wishes();
    Scope scope =
        new Scope(
            then.scope().deck().map(d -> names.getOrDefault(d, d)),
            then.scope().storey(),
            wishes
                .leavingOpen(open(wishes, named, names))
                .withOutlets(outlets(wishes.outlets(), names)));
    return new Redecided(
        then.kit(),
        run(kit),
        then.rain(),
        scope,
        told.map(Overrides::said).orElse(Map.of()),
        counted.stream()
            .map(FieldBays::field)
            .flatMap(f -> HighLineAsked.of(f).stream())
            .map(HighLineAsked::text)
            .collect(Collectors.toSet()));
  }

  /** Counted names of decks, fields and bays, by the names that were kept. */
  private static Map<String, String> names(List<FieldBays> named, List<FieldBays> counted) {
    Map<String, String> names = new HashMap<>();
    for (int i = 0; i < named.size(); i++) {
      String field = named.get(i).field().id();
      String plain = counted.get(i).field().id();
      names.put(field, plain);
      names.put(deck(field), deck(plain));
      for (int k = 0; k < named.get(i).bays().size(); k++) {
        names.put(
            field + "/" + named.get(i).bays().get(k).id(),
            plain + "/" + counted.get(i).bays().get(k).id());
      }
    }
    return names;
  }

  private static String deck(String field) {
    return field.substring(0, field.indexOf('/'));
  }

  private static OutletWishes outlets(OutletWishes then, Map<String, String> names) {
    Map<String, List<Double>> places = new HashMap<>();
    then.places().forEach((field, own) -> places.put(names.getOrDefault(field, field), own));
    return new OutletWishes(places);
  }

  /** A bay's own name means another bay in each field, so that it is told with its field. */
  private static Set<String> open(Wishes wishes, List<FieldBays> named, Map<String, String> names) {
    Set<String> open = new TreeSet<>();
    for (FieldBays field : named) {
      field
          .bays()
          .forEach(
              b -> {
                String whole = field.field().id() + "/" + b.id();
                if (wishes.leaveOpen().contains(b.id()) || wishes.leaveOpen().contains(whole)) {
                  open.add(names.getOrDefault(whole, whole));
                }
              });
    }
    return open;
  }

  private static OptionalDouble run(Kit used) {
    return KitReader.allBuiltIn().stream()
        .filter(k -> k.id().equals(used.id()))
        .filter(k -> k.get(DrainValue.RUN_PER_FALL) != used.get(DrainValue.RUN_PER_FALL))
        .mapToDouble(k -> used.get(DrainValue.RUN_PER_FALL))
        .findFirst();
  }
}
