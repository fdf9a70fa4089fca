package org.underlee.samples;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Storm;
import org.underlee.kit.Kit;
import org.underlee.kit.StockItem;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.Survey;
import org.underlee.takeoff.Buying;
import org.underlee.takeoff.ListReader;

/** Designs with a price for everything that their kit is made of. */
final class Priced {
  private static final String COLUMNS = "item,unit,length,pack,price,currency\n";

  private Priced() {}

  /** A deck, laid out bare in the rain that holds for any place, and priced. */
  static Design design(SampleDeck deck, Mix mix, Kit kit) {
    Scope bare = Scope.OUTSIDE.with(Wishes.NONE.withBoardsOff());
    Survey survey = DeckRun.survey(IfcEmitter.emit(deck, mix), "deck.ifc");
    Storm storm = RainData.builtIn().service(RainData.ANYWHERE);
    return DeckRun.design(survey, bare, DeckRun.layOut(survey, bare, kit, storm), storm, of(kit));
  }

  private static Buying of(Kit kit) {
    String rows = kit.stock().stream().map(Priced::rows).collect(Collectors.joining());
    Set<String> items = kit.stock().stream().map(StockItem::id).collect(Collectors.toSet());
    return new Buying(
        Optional.of(new ListReader(items).prices(COLUMNS + rows, "prices.csv")), List.of());
  }

  private static String rows(StockItem item) {
    String unit = item.shop().unit();
    if (!item.isSoldByLength()) {
      return row(item, unit, "", item.shop().pieces(), item.shop().pieces() * 0.11);
    }
    return item.stockLengths().stream()
        .map(l -> row(item, unit, String.format(Locale.ROOT, "%.1f mm", l * 1000), 1, 3.07 * l))
        .collect(Collectors.joining());
  }

  private static String row(StockItem item, String unit, String length, int pack, double price) {
    return String.format(
        Locale.ROOT, "%s,%s,%s,%d,%.2f,EUR%n", item.id(), unit, length, pack, price);
  }
}
