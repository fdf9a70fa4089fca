package org.underlee.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.finding.FileFault;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.kit.StockItem;
import org.underlee.takeoff.Buying;
import org.underlee.takeoff.ListReader;
import org.underlee.takeoff.OnHand;
import org.underlee.takeoff.PriceList;
import picocli.CommandLine.Option;

/** What things cost, and what need not be bought. */
final class BuyingOptions {
  @Option(
      names = "--prices",
      paramLabel = "LIST.csv",
      description = {
        "Prices: a table with the columns item, unit, length, pack, price, currency and, where they"
            + " are for one kit alone, kit."
      })
  Optional<Path> prices = Optional.empty();

  @Option(
      names = "--stock",
      paramLabel = "LIST.csv",
      description = "What is on hand: a table with the columns item, length, count.")
  Optional<Path> stock = Optional.empty();

  /**
   * The lists, read.
   *
   * @param kits in use, whose items the lists may name besides those of the built-in ones
   */
  Buying buying(List<Kit> kits) {
    Set<String> items =
        Stream.concat(kits.stream(), KitReader.allBuiltIn().stream())
            .flatMap(k -> k.stock().stream())
            .map(StockItem::id)
            .collect(Collectors.toSet());
    ListReader reader = new ListReader(items);
    Optional<PriceList> list = prices.map(f -> reader.prices(text(f), f.toString()));
    List<OnHand> onHand = stock.map(f -> reader.onHand(text(f), f.toString())).orElse(List.of());
    return new Buying(list, onHand);
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new InputException(
          Place.NOWHERE.inFile(file.toString()),
          "the list cannot be read: " + FileFault.words(e),
          "Check the path; save the list as CSV in UTF-8.");
    }
  }
}
