package org.underlee.panel.view;

import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import javafx.geometry.Orientation;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.SplitPane;
import javafx.scene.control.Tab;
import javafx.scene.control.TabPane;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.DragEvent;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import org.underlee.panel.model.Command;
import org.underlee.panel.model.Lists;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Settings;

/** The panel, to be put into any JavaFX scene. */
public final class PanelView extends StackPane {
  /** Commands whose keys belong to a text while one is being typed. */
  private static final Set<String> EDIT_TEXT = Set.of("undo", "redo");

  private final PanelModel model;
  private final Actions actions;
  private final FindingsView findings;
  private final ServicesView services;
  private final TableViews takeoff;
  private final WaterView water;
  private final OutlineView outline;
  private final TabPane pictures = new TabPane();
  private final TabPane tables = new TabPane();
  private final PaletteView palette;
  private final WelcomeView welcome;
  private final BorderPane frame = new BorderPane();

  public PanelView(PanelModel model, FileAsk ask) {
    this.model = model;
    findings = new FindingsView(model);
    services = new ServicesView(model);
    actions = new Actions(model, this, ask);
    services.fillBar(actions);
    takeoff = new TableViews(model, "takeoff");
    water = new WaterView(model, actions);
    outline = new OutlineView(model);
    palette = new PaletteView(actions::found);
    welcome = new WelcomeView(model, actions::open);
    frame.setTop(new HeaderView(model, actions, palette));
    frame.setCenter(body());
    frame.setBottom(new StatusBar(model));
    StackPane.setAlignment(palette, Pos.TOP_CENTER);
    getChildren().addAll(frame, welcome, palette);
    listen();
    dress(this);
    showFile();
    showTables();
  }

  private SplitPane body() {
    SplitPane left = new SplitPane(titled("Outline", outline), titled("Decisions", decisions()));
    left.setOrientation(Orientation.VERTICAL);
    left.setDividerPositions(0.5);
    pictures.setId("pictures");
    tables.setId("tables");
    FlatView plan =
        new FlatView(
            "plan",
            "The decks in plan",
            model.drawings().plan(),
            Optional.of(new OutletHandles(model, actions)));
    FlatView section =
        new FlatView(
            "section",
            "The section through the bay",
            model.drawings().section(),
            Optional.of(new SectionHandles(model)));
    Tab sectionTab =
        wanted(
            tab(Place.SECTION, "Section", new PicturePlace(model, section)),
            model.drawings()::wantSection);
    model
        .drawings()
        .sectionName()
        .addListener((o, before, now) -> sectionTab.setText(("Section  " + now).strip()));
    pictures
        .getTabs()
        .setAll(
            tab(Place.PICTURE, "3-D", new Picture3dView(model, actions)),
            wanted(
                tab(Place.PLAN, "Plan", new PicturePlace(model, plan)), model.drawings()::wantPlan),
            sectionTab);
    tables
        .getTabs()
        .setAll(
            tab(Place.FINDINGS, "Findings", findings),
            wanted(tab(Place.TAKEOFF, "Takeoff", takeoff), takeoff::want),
            wanted(tab(Place.WATER, "Water", water), water::want),
            servicesTab(),
            tab(Place.OPTIONS, "Arrangements", new ChoicesView(model)),
            tab(Place.CHANGES, "New export", new ResyncView(model, actions)));
    SplitPane middle = new SplitPane(pictures, tables);
    middle.setOrientation(Orientation.VERTICAL);
    middle.setDividerPositions(0.66);
    SplitPane body = new SplitPane(left, middle, titled("Inspector", new InspectorView(model)));
    body.setDividerPositions(0.215, 0.79);
    SplitPane.setResizableWithParent(left, false);
    return body;
  }

  /** With large letters on a small screen there is less room than there are decisions. */
  private ScrollPane decisions() {
    ScrollPane scroll = new ScrollPane(new DecisionsView(model, actions));
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setFocusTraversable(false);
    return scroll;
  }

  /** A drawing is made only while its tab is open, so that a drag waits for nothing unseen. */
  private static Tab wanted(Tab tab, Consumer<Boolean> want) {
    want.accept(false);
    tab.selectedProperty().addListener((o, before, now) -> want.accept(now));
    return tab;
  }

  /** Looking for issues takes a while and is done while someone looks at them. */
  private Tab servicesTab() {
    Tab tab = tab(Place.SERVICES, "Services", services);
    tab.selectedProperty().addListener((o, before, now) -> model.services().want(now));
    return tab;
  }

  private static Tab tab(Place place, String words, Node content) {
    Tab tab = new Tab(words, content);
    tab.setId(id(place));
    tab.setGraphic(Icons.icon(place.icon()));
    tab.setClosable(false);
    return tab;
  }

  private static String id(Place place) {
    return "tab-" + place.name().toLowerCase(Locale.ROOT);
  }

  private static BorderPane titled(String words, Node content) {
    Label head = new Label(words);
    head.getStyleClass().add("pane-head");
    BorderPane pane = new BorderPane(content);
    pane.setTop(head);
    pane.getStyleClass().add("titled");
    return pane;
  }

  private void listen() {
    model.session().model().addListener((o, before, now) -> showFile());
    model.lists().addListener((o, before, now) -> showTables());
    model.rehearsed().addListener((o, before, now) -> now.ifPresent(this::rehearse));
    model.settings().addListener((o, before, now) -> dressAnew(before, now));
    addEventFilter(KeyEvent.KEY_PRESSED, this::key);
    addEventFilter(MouseEvent.MOUSE_PRESSED, this::pressed);
    setOnDragOver(this::dragOver);
    setOnDragDropped(this::dropped);
  }

  private void key(KeyEvent e) {
    if (Keys.match(PaletteView.KEYS, e)) {
      turnPalette();
      e.consume();
      return;
    }
    boolean isTyped = palette.isVisible() && !(e.isShortcutDown() || e.getCode().isFunctionKey());
    Optional<Command> meant =
        isTyped ? Optional.empty() : actions.all().stream().filter(c -> isMeant(c, e)).findFirst();
    meant.ifPresent(
        command -> {
          e.consume();
          palette.close();
          command.runIfItCan();
        });
  }

  private static boolean isMeant(Command command, KeyEvent e) {
    boolean ofText = e.getTarget() instanceof TextInputControl && EDIT_TEXT.contains(command.id());
    return !ofText && Keys.match(command.keys(), e) && command.can().getAsBoolean();
  }

  private void turnPalette() {
    if (palette.isVisible()) {
      palette.close();
    } else {
      palette.open();
    }
  }

  /** A press beside the list of commands puts it away. */
  private void pressed(MouseEvent e) {
    if (palette.isVisible() && !palette.holds(e.getTarget())) {
      palette.close();
    }
  }

  private void dragOver(DragEvent e) {
    if (e.getDragboard().hasFiles()) {
      e.acceptTransferModes(TransferMode.COPY);
    }
    e.consume();
  }

  private void dropped(DragEvent e) {
    boolean some = e.getDragboard().hasFiles();
    if (some) {
      take(e.getDragboard().getFiles().stream().map(File::toPath).toList());
    }
    e.setDropCompleted(some);
    e.consume();
  }

  /** Takes files that are dropped on the panel. */
  public void take(List<Path> files) {
    Tab shown = tables.getSelectionModel().getSelectedItem();
    model.dropped().drop(files, shown.getId().equals(id(Place.SERVICES)));
  }

  private void showFile() {
    Optional<Path> file = model.session().model().get();
    welcome.setVisible(file.isEmpty());
  }

  private void showTables() {
    takeoff.show(model.lists().get().takeoff());
    water.show(model.lists().get().water());
    int count = model.lists().get().noticed().size();
    tables.getTabs().get(0).setText(count == 0 ? "Findings" : "Findings (" + count + ")");
  }

  void show(Place place) {
    switch (place) {
      case PICTURE -> choose(pictures, 0);
      case PLAN -> choose(pictures, 1);
      case SECTION -> choose(pictures, 2);
      case FINDINGS -> choose(tables, 0);
      case TAKEOFF -> choose(tables, 1);
      case WATER -> choose(tables, 2);
      case SERVICES -> choose(tables, 3);
      case OPTIONS -> choose(tables, 4);
      case CHANGES -> choose(tables, 5);
      case OUTLINE -> outline.requestFocus();
    }
  }

  private static void choose(TabPane pane, int tab) {
    pane.getSelectionModel().select(tab);
    pane.getSelectionModel().getSelectedItem().getContent().requestFocus();
  }

  /** Goes to a table by its name. */
  void showTable(Place place, String name) {
    show(place);
    (place == Place.WATER ? water.tables() : takeoff).choose(name);
  }

  FindingsView findings() {
    return findings;
  }

  ServicesView services() {
    return services;
  }

  /** Goes to a field of the panel by its id. */
  void edit(String id) {
    Optional.ofNullable(lookup("#" + id)).ifPresent(Node::requestFocus);
  }

  void filterFindings() {
    show(Place.FINDINGS);
    lookup("#findings-filter").requestFocus();
  }

  /** Rows are made once below the first page, so that those of a model come sooner. */
  private void rehearse(Lists lists) {
    if (model.session().model().get().isEmpty()) {
      outline.rehearse(lists);
      findings.rehearse(lists);
      ImagePane.rehearse();
    }
  }

  /** All styles are worked out again, which takes a while: only where they differ. */
  private void dressAnew(Settings before, Settings now) {
    if (before.tone() != now.tone() || before.fontPercent() != now.fontPercent()) {
      dress(this);
    }
  }

  /** Gives a node of its own window, such as a dialog, the panel's colours and letters. */
  void dress(Region region) {
    Dress.put(region, model.settings().get());
  }

  /** A scene with the panel in it. */
  public static Scene scene(PanelView view, double width, double height) {
    return new Scene(view, width, height);
  }
}
