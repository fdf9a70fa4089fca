package org.underlee.report.packet;

import java.util.List;
import java.util.Optional;
import org.underlee.picture.Image;
import org.underlee.picture.PlanDrawing;
import org.underlee.picture.ScaledDrawing;

/** What a sheet is made of. Texts are in the reader's language and units already. */
public sealed interface Block {

  /** A heading within a sheet. */
  record Heading(String text) implements Block {}

  /** A paragraph. */
  record Text(String text, Tone tone) implements Block {}

  /** How a paragraph is said. */
  enum Tone {
    PLAIN,
    /** The one thing to remember. */
    STRONG,
    /** Someone may be hurt, or something spoiled. */
    CAUTION
  }

  /** Names with their values, for a glance. */
  record Facts(List<Fact> facts) implements Block {
    public Facts {
      facts = List.copyOf(facts);
    }
  }

  /** One of them. */
  record Fact(String name, String value) {}

  /** Rows under a header that is said again on every page. */
  record Table(List<Column> columns, List<List<String>> rows) implements Block {
    public Table {
      columns = List.copyOf(columns);
      rows = rows.stream().map(List::copyOf).toList();
    }
  }

  /**
   * A column.
   *
   * @param numbers whether it is set to the right, as numbers are
   */
  record Column(String name, boolean numbers) {
    static Column text(String name) {
      return new Column(name, false);
    }

    static Column number(String name) {
      return new Column(name, true);
    }
  }

  /**
   * A vector drawing at a usual scale that fits the sheet.
   *
   * @param id names its file: {@code plan}, {@code section-b6}
   * @param caption what it shows
   * @param share of the sheet's height that it may take
   * @param drafted for those who draft: in true proportions; none where there is no such drawing
   */
  record Drawing(
      String id, String caption, ScaledDrawing plan, double share, Optional<ScaledDrawing> drafted)
      implements Block {
    /** One that is in true proportions itself. */
    Drawing(String id, String caption, ScaledDrawing plan, double share) {
      this(id, caption, plan, share, Optional.of(plan));
    }
  }

  /** A drawing at full size, whose paper is cut along its lines. */
  record Template(String id, String caption, PlanDrawing plan) implements Block {}

  /** A raster picture over the sheet's width. */
  record Picture(String id, String caption, Image image) implements Block {}

  /** Boxes to tick off. */
  record Ticks(List<Tick> ticks) implements Block {
    public Ticks {
      ticks = List.copyOf(ticks);
    }
  }

  /**
   * One of them.
   *
   * @param id keeps the tick on the reader's device: {@code step-3}
   * @param note smaller, below; empty for none
   */
  record Tick(String id, String text, String note) {}

  /** Labels to cut out and stick on the pieces. */
  record Stickers(List<Sticker> stickers) implements Block {
    public Stickers {
      stickers = List.copyOf(stickers);
    }
  }

  /**
   * One label.
   *
   * @param end which end goes where: said along an arrow that points to the high end
   */
  record Sticker(String label, String part, String size, String end) {}
}
