package org.underlee.kit;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.underlee.finding.FileFault;
import org.underlee.finding.InputException;
import org.underlee.finding.JsonInput;
import org.underlee.finding.Nearest;
import org.underlee.finding.Place;

/** Reads kit files. Every key must be known and every number there, each with its source. */
public final class KitReader {
  static final String SCHEMA = "underlee/kit/1";

  /** The kits that ship with the program; the first is used when none is named. */
  public static final List<String> BUILT_IN =
      List.of(
          "formed-aluminium", "galvanised-steel", "rigid-vinyl", "membrane-drape", "ribbed-sheet");

  private static final double MM = 0.001;
  private static final double PERCENT = 100;

  private record KitFile(
      @JsonProperty(required = true) String schema,
      @JsonProperty(required = true) String id,
      @JsonProperty(required = true) String version,
      @JsonProperty(required = true) String name,
      @JsonProperty(required = true) String family,
      @JsonProperty(required = true) Map<String, Entry> values,
      @JsonProperty(required = true) List<MaterialEntry> materials,
      @JsonProperty(required = true) List<StockEntry> stock) {}

  private record Entry(
      @JsonProperty(required = true) double value, @JsonProperty(required = true) String source) {}

  private record MaterialEntry(
      @JsonProperty(required = true) String id,
      @JsonProperty(required = true) String name,
      @JsonProperty(required = true) double densityKgPerM3,
      @JsonProperty(required = true) List<Integer> colour,
      @JsonProperty(required = true) String source) {}

  private record StockEntry(
      @JsonProperty(required = true) String id,
      @JsonProperty(required = true) String description,
      @Nullable String descriptionInInches,
      @JsonProperty(required = true) String unit,
      @JsonProperty(required = true) List<Double> stockLengthsMm,
      @JsonProperty(required = true) double kerfMm,
      @JsonProperty(required = true) String material,
      @JsonProperty(required = true) double thicknessMm,
      @JsonProperty(required = true) ShopEntry shop,
      @JsonProperty(required = true) String source) {}

  private record ShopEntry(
      @JsonProperty(required = true) String unit,
      @JsonProperty(required = true) int pieces,
      @JsonProperty(required = true) double sparePercent,
      @JsonProperty(required = true) double endTrimMm,
      @JsonProperty(required = true) double keepOffcutMm,
      @JsonProperty(required = true) double ripWidthMm,
      @JsonProperty(required = true) String source) {}

  private KitReader() {}

  /** The kit that is used when none is named. */
  public static Kit builtIn() {
    return Usual.KIT;
  }

  /** Every kit that ships with the program. */
  public static List<Kit> allBuiltIn() {
    return BUILT_IN.stream().map(KitReader::builtIn).toList();
  }

  /** The usual kit, read once: a hand that drags asks for it at every step. */
  private static final class Usual {
    private static final Kit KIT = builtIn(BUILT_IN.get(0));
  }

  private static Kit builtIn(String name) {
    try (InputStream in = KitReader.class.getResourceAsStream(name + ".json")) {
      if (in == null) {
        throw new IllegalStateException("the built-in kit " + name + " is missing");
      }
      return read(new String(in.readAllBytes(), StandardCharsets.UTF_8), name + ".json");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A built-in kit when one is meant by name, else the file at that path. */
  public static Kit named(String nameOrPath) {
    if (BUILT_IN.contains(nameOrPath)) {
      return nameOrPath.equals(BUILT_IN.get(0)) ? Usual.KIT : builtIn(nameOrPath);
    }
    Path path = Path.of(nameOrPath);
    try {
      return read(Files.readString(path), nameOrPath);
    } catch (NoSuchFileException e) {
      throw new InputException(
          Place.NOWHERE.inFile(nameOrPath), "there is no such kit, and no such file", meant(path));
    } catch (IOException e) {
      throw new InputException(
          Place.NOWHERE.inFile(nameOrPath),
          "the kit cannot be read: " + FileFault.words(e),
          "Check the rights to the file, and that it is text in UTF-8.");
    }
  }

  private static String meant(Path missing) {
    Optional<String> near =
        Nearest.meant(missing.toString(), BUILT_IN).stream()
            .findFirst()
            .or(() -> FileFault.meant(missing).map(Path::toString));
    return near.map(n -> "Did you mean " + n + "? ").orElse("")
        + "Give the path of a kit file, or the name of a built-in kit: "
        + String.join(", ", BUILT_IN)
        + ".";
  }

  static Kit read(String text, String file) {
    return new Check(file)
        .kit(
            JsonInput.read(
                text,
                file,
                KitFile.class,
                "the kit",
                "Compare the file with docs/reference/kit.schema.json."));
  }

  /** The checks that JSON types cannot make. */
  private record Check(String file) {
    Kit kit(KitFile f) {
      require(
          f.schema.equals(SCHEMA),
          "its schema is \"" + f.schema + "\", expected \"" + SCHEMA + "\"");
      Family family =
          Family.named(f.family)
              .orElseThrow(
                  () -> wrong("its family is \"" + f.family + "\", expected " + Family.words()));
      List<Material> materials = f.materials.stream().map(this::material).toList();
      List<StockItem> stock = f.stock.stream().map(this::item).toList();
      for (String id : family.items()) {
        require(
            stock.stream().anyMatch(s -> s.id().equals(id)), "it has no stock item \"" + id + "\"");
      }
      for (StockItem item : stock) {
        require(
            materials.stream().anyMatch(m -> m.id().equals(item.material())),
            "item \""
                + item.id()
                + "\" is of material \""
                + item.material()
                + "\", which is not listed");
      }
      requireDifferent("stock item", stock.stream().map(StockItem::id).toList());
      requireDifferent("material", materials.stream().map(Material::id).toList());
      Kit kit = new Kit(f.id, f.version, f.name, family, values(f, family), materials, stock);
      Contradictions.of(kit).ifPresent(what -> require(false, what));
      return kit;
    }

    private Map<KitNumber, Kit.Sourced> values(KitFile f, Family family) {
      Map<KitNumber, Kit.Sourced> values = new HashMap<>();
      f.values.forEach(
          (key, number) -> {
            Optional<KitNumber> value = family.number(key);
            require(
                value.isPresent(),
                "its value \"" + key + "\" is unknown in the family \"" + f.family + "\"");
            require(
                Double.isFinite(number.value) && number.value > 0,
                "its value \"" + key + "\" is " + number.value + ", expected more than zero");
            require(!number.source.isBlank(), "its value \"" + key + "\" names no source");
            value.ifPresent(
                v -> values.put(v, new Kit.Sourced(v.toSi(number.value), number.source)));
          });
      for (KitNumber value : family.numbers()) {
        require(
            value.isOptional() || values.containsKey(value),
            "its value \"" + value.key() + "\" is missing");
      }
      return values;
    }

    private void requireDifferent(String what, List<String> ids) {
      for (String id : ids) {
        require(
            Collections.frequency(ids, id) == 1,
            "it has more than one " + what + " \"" + id + "\"");
      }
    }

    private Material material(MaterialEntry m) {
      require(
          Double.isFinite(m.densityKgPerM3) && m.densityKgPerM3 > 0,
          "material \"" + m.id + "\" has densityKgPerM3 " + m.densityKgPerM3);
      require(m.colour.size() == 3, "material \"" + m.id + "\" needs a colour of three numbers");
      require(
          m.colour.stream().allMatch(c -> c >= 0 && c <= 255),
          "material \"" + m.id + "\" has colour " + m.colour + ", expected 0 to 255");
      return new Material(
          m.id,
          m.name,
          m.densityKgPerM3,
          m.colour.get(0),
          m.colour.get(1),
          m.colour.get(2),
          m.source);
    }

    private StockItem item(StockEntry s) {
      require(s.kerfMm >= 0, "item \"" + s.id + "\" has kerf " + s.kerfMm);
      require(
          s.stockLengthsMm.stream().allMatch(l -> l > 0),
          "item \"" + s.id + "\" has a stock length that is not more than zero");
      return new StockItem(
          s.id,
          s.description,
          Optional.ofNullable(s.descriptionInInches),
          s.unit,
          s.stockLengthsMm.stream().map(l -> l * MM).toList(),
          s.kerfMm * MM,
          s.material,
          s.thicknessMm * MM,
          shop(s.id, s.shop),
          s.source);
    }

    private Shop shop(String item, ShopEntry s) {
      require(s.pieces >= 1, "item \"" + item + "\" is sold in units of " + s.pieces + " pieces");
      require(!s.source.isBlank(), "how item \"" + item + "\" is sold names no source");
      for (double number : List.of(s.sparePercent, s.endTrimMm, s.keepOffcutMm, s.ripWidthMm)) {
        require(
            Double.isFinite(number) && number >= 0,
            "how item \"" + item + "\" is sold has a number below zero: " + number);
      }
      return new Shop(
          s.unit,
          s.pieces,
          s.sparePercent / PERCENT,
          s.endTrimMm * MM,
          s.keepOffcutMm * MM,
          s.ripWidthMm * MM,
          s.source);
    }

    private void require(boolean holds, String what) {
      if (!holds) {
        throw wrong(what);
      }
    }

    private InputException wrong(String what) {
      return new InputException(
          Place.NOWHERE.inFile(file),
          "the kit cannot be used: " + what,
          "Correct the kit file; docs/reference lists every key and its meaning.");
    }
  }
}
