package org.underlee.panel.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.Slider;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.underlee.panel.model.Decisions;
import org.underlee.panel.model.FallText;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Problem;
import org.underlee.units.LengthText;
import org.underlee.units.Lengths;

/** What a person decides: which deck, which kit, which fall, which rain. */
final class DecisionsView extends VBox {
  private static final String ALL_DECKS = "All outside decks";
  private static final String AS_FRAMED = "As the framing has it";

  /** The slider runs over the slope, so that a drag to the right is always steeper. */
  private static final double STEEPEST = 1.0 / 24;

  private static final double FLATTEST = 1.0 / 200;

  private final PanelModel model;
  private final ComboBox<String> deck = new ComboBox<>();
  private final ComboBox<String> kit = new ComboBox<>();
  private final Slider fall = new Slider(FLATTEST, STEEPEST, 1.0 / 96);
  private final TypedText fallText = new TypedText(this::setFall);
  private final ComboBox<String> lowEnd = new ComboBox<>();
  private final TypedText seat = new TypedText(this::setSeat);
  private final ComboBox<String> rain = new ComboBox<>();
  private final TypedText dryZone = new TypedText(this::setDryZone);
  private final Label rainLabel = label("", rain);
  private final Label slip = new Label();
  private boolean following;

  DecisionsView(PanelModel model, Actions actions) {
    this.model = model;
    setId("decisions");
    getStyleClass().add("decisions");
    deck.setId("deck");
    kit.setId("kit");
    fall.setId("fall");
    fallText.setId("fall-text");
    rain.setId("rain");
    rain.setEditable(true);
    rain.getItems().setAll(model.offer().rainPlaces());
    rain.setCellFactory(
        v -> new WordsCell(place -> model.offer().rainWords(place, model.units().get())));
    rainLabel.setId("rain-label");
    worded(deck, id -> id.equals(ALL_DECKS) ? id : model.offer().deckWords(id));
    worded(kit, model.offer()::kitWords);
    worded(lowEnd, line -> line.equals(AS_FRAMED) ? line : model.offer().lowEndWords(line));
    lowEnd.setId("low-end");
    lowEnd.setAccessibleText("Line that the low ends follow");
    seat.setId("seat");
    seat.setPromptText("as the kit has it");
    seat.setAccessibleText(
        "Seat at the high end, such as 2 3/8\", 60 mm or -20 mm; empty for the kit's");
    dryZone.setId("dry-zone");
    dryZone.setPromptText("everything below the decks");
    dryZone.setAccessibleText(
        "What must stay dry: a slab or space by name or GlobalId, or corners in metres");
    slip.setId("slip");
    slip.setWrapText(true);
    slip.getStyleClass().add("slip");
    fallText.setPrefColumnCount(7);
    HBox.setHgrow(fall, Priority.ALWAYS);
    HBox falls = new HBox(fall, fallText);
    falls.getStyleClass().add("fall-row");
    getChildren()
        .addAll(
            labelled("Deck", deck),
            labelled("Kit", kits(actions)),
            labelled("Fall of the pans", falls),
            labelled("Low end", lowEnd),
            labelled("Seat above the joist bottom, high end", seat),
            new VBox(rainLabel, rain),
            labelled("Must stay dry: slab, space or corners", dryZone),
            slip,
            new AlsoDecidedView(model));
    for (ComboBox<String> box : List.of(deck, kit, lowEnd, rain)) {
      box.setMaxWidth(Double.MAX_VALUE);
    }
    deck.setAccessibleText("Deck");
    kit.setAccessibleText("Kit");
    fall.setAccessibleText("Fall of the pans");
    fallText.setAccessibleText("Fall of the pans, such as 1:96, 1/8 in per ft or 1 %");
    rain.setAccessibleText("Rain to carry");
    listen();
    follow();
  }

  private HBox kits(Actions actions) {
    HBox.setHgrow(kit, Priority.ALWAYS);
    Button own = actions.button("own-kit", "own-kit");
    own.setText("…");
    own.setAccessibleText(actions.named("own-kit").words());
    own.setTooltip(new Tooltip(actions.named("own-kit").words()));
    HBox kits = new HBox(kit, own);
    kits.getStyleClass().add("fall-row");
    return kits;
  }

  private static VBox labelled(String words, Node node) {
    return new VBox(label(words, node), node);
  }

  private static Label label(String words, Node node) {
    Label label = new Label(words);
    label.getStyleClass().add("quiet");
    label.setLabelFor(node);
    return label;
  }

  /** Shows what there is to choose from in words; what is chosen stays the id. */
  private static void worded(ComboBox<String> box, UnaryOperator<String> words) {
    box.setCellFactory(v -> new WordsCell(words));
    box.setButtonCell(new WordsCell(words));
  }

  private static final class WordsCell extends ListCell<String> {
    private final UnaryOperator<String> words;

    WordsCell(UnaryOperator<String> words) {
      this.words = words;
    }

    @Override
    protected void updateItem(String item, boolean empty) {
      super.updateItem(item, empty);
      setText(empty || item == null ? null : words.apply(item));
    }
  }

  private void listen() {
    deck.valueProperty().addListener((o, before, now) -> decide(() -> setDeck(now)));
    kit.valueProperty().addListener((o, before, now) -> decide(() -> setKit(now)));
    rain.valueProperty().addListener((o, before, now) -> decide(() -> setRain(now)));
    fall.valueProperty()
        .addListener(
            (o, before, now) ->
                decide(
                    () -> {
                      double run = Math.rint(1 / now.doubleValue());
                      if (fall.isValueChanging()) {
                        model.dragFall(run);
                      } else {
                        model.setFall(OptionalDouble.of(run));
                      }
                    }));
    fall.valueChangingProperty()
        .addListener(
            (o, before, now) -> {
              if (!now) {
                decide(() -> model.setFall(OptionalDouble.of(Math.rint(1 / fall.getValue()))));
              }
            });
    fall.addEventFilter(KeyEvent.KEY_PRESSED, this::step);
    lowEnd.valueProperty().addListener((o, before, now) -> decide(() -> setLowEnd(now)));
    model.stayDry().problem().addListener((o, before, now) -> slip(words(now)));
    model.ownKit().problem().addListener((o, before, now) -> slip(words(now)));
    model.units().addListener((o, before, now) -> follow());
    model.session().decisions().addListener((o, before, now) -> follow());
    model.session().result().addListener((o, before, now) -> follow());
    model.session().problem().addListener((o, before, now) -> slip(words(now)));
  }

  private static String words(Optional<Problem> problem) {
    return problem.map(Problem::words).orElse("");
  }

  private void decide(Runnable decision) {
    if (!following) {
      decision.run();
    }
  }

  private void setDeck(String value) {
    if (value != null) {
      Optional<String> id = value.equals(ALL_DECKS) ? Optional.empty() : Optional.of(value);
      model.session().decide("Choose the deck", d -> d.withDeck(id));
    }
  }

  private void setKit(String value) {
    if (value != null) {
      model.session().decide("Choose the kit", d -> d.withKit(value));
    }
  }

  private void setRain(String value) {
    if (value != null && !model.offer().isRain(value)) {
      slip(
          "\""
              + value
              + "\" is no rain; write a rate such as 8in/h or 150mm/h, or a place of the list.");
    } else if (value != null) {
      slip("");
      model.session().decide("Set the rain", d -> d.withRain(value));
    }
  }

  private void setLowEnd(String value) {
    if (value != null) {
      Optional<String> line = value.equals(AS_FRAMED) ? Optional.empty() : Optional.of(value);
      model.session().decide("Choose the low end", d -> d.withLowEnd(line));
    }
  }

  /** An empty field gives the choice back to the kit. */
  private boolean setSeat(String text) {
    try {
      OptionalDouble metres =
          text.isBlank() ? OptionalDouble.empty() : OptionalDouble.of(LengthText.parseSigned(text));
      slip("");
      model.session().decide("Set the seat", d -> d.withSeat(metres));
      return true;
    } catch (IllegalArgumentException e) {
      slip(String.valueOf(e.getMessage()));
      return false;
    }
  }

  private boolean setFall(String text) {
    OptionalDouble run = FallText.parse(text);
    if (run.isPresent()) {
      slip("");
      model.setFall(run);
    } else {
      slip("\"" + text + "\" is no fall; write it like 1:96, 1/8 in per ft or 1 %.");
    }
    return run.isPresent();
  }

  private boolean setDryZone(String text) {
    model.stayDry().say(text);
    return true;
  }

  /** The arrow keys step the slider from one usual fall to the next. */
  private void step(KeyEvent e) {
    boolean steeper = e.getCode() == KeyCode.RIGHT || e.getCode() == KeyCode.UP;
    if (steeper || e.getCode() == KeyCode.LEFT || e.getCode() == KeyCode.DOWN) {
      double run = FallText.stepped(model.offer().runPerFall(), steeper);
      model.setFall(OptionalDouble.of(Math.max(1 / STEEPEST, Math.min(1 / FLATTEST, run))));
      e.consume();
    }
  }

  private void slip(String words) {
    Seen.say(slip, words);
  }

  private void follow() {
    following = true;
    Decisions d = model.session().decisions().get();
    List<String> decks = new ArrayList<>(List.of(ALL_DECKS));
    decks.addAll(model.offer().decks());
    if (!deck.getItems().equals(decks)) {
      deck.getItems().setAll(decks);
    }
    deck.setValue(d.deck().orElse(ALL_DECKS));
    if (!kit.getItems().equals(model.offer().kits())) {
      kit.getItems().setAll(model.offer().kits());
    }
    kit.setValue(d.kit());
    double run = model.offer().runPerFall();
    if (!fall.isValueChanging()) {
      fall.setValue(1 / run);
    }
    fallText.show(Lengths.fall(1 / run).replaceAll(" \\(.*", ""));
    rain.setValue(d.rain());
    rainLabel.setText("Rain to carry:  " + model.offer().rainRate(model.units().get()));
    followWishes(d);
    following = false;
  }

  private void followWishes(Decisions d) {
    List<String> lines = new ArrayList<>(List.of(AS_FRAMED));
    lines.addAll(model.offer().lowEnds());
    d.lowEnd().filter(l -> !lines.contains(l)).ifPresent(lines::add);
    if (!lowEnd.getItems().equals(lines)) {
      lowEnd.getItems().setAll(lines);
    }
    lowEnd.setValue(d.lowEnd().orElse(AS_FRAMED));
    dryZone.show(model.stayDry().text());
    OptionalDouble metres = d.seat();
    seat.show(metres.isPresent() ? Lengths.format(metres.getAsDouble(), model.units().get()) : "");
  }
}
