package org.underlee.panel.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.layout.DryZone;
import org.underlee.units.Lengths.UnitSystem;

class MemoryTest {
  @TempDir Path folder;

  private final Decisions some =
      Decisions.FIRST
          .withKit("rigid-vinyl")
          .withDeck(Optional.of("deck-2"))
          .withRunPerFall(OptionalDouble.of(64))
          .withRain("Mobile, AL")
          .withService(Path.of("pipes.ifc"))
          .withSeat(OptionalDouble.of(0.0625))
          .withLowEnd(Optional.of("beam-1"))
          .withBoardsOff(true)
          .turning(new Item.OfBay("deck-2/field-1", "B3"))
          .withDryZone(Optional.of(DryZone.parse("0,0 3.6,0 3.6,2.4")))
          .withRole("2zB2dK45LPpuPH7uZa1OTt", Optional.of("not-framing"))
          .alsoDraining("12m2@3.2,1.5 7m2@4,1.5")
          .accepting("clash 12", "seen \"on site\"")
          .accepting(
              Map.of(
                  "flat B3",
                  new Acceptance("agreed", "the pans fall 1:96", OptionalDouble.of(0.01))));

  @Test
  void decisionsComeBackAsTheyWere() {
    Path model = Path.of("deck.ifc");
    new Memory(folder).keep(model, some);
    assertThat(new Memory(folder).decisions(model)).contains(some);
    assertThat(new Memory(folder).decisions(Path.of("other.ifc"))).isEmpty();
  }

  @Test
  void whatAnOlderFileSaysIsAcceptedIsRead() throws IOException {
    Path model = Path.of("deck.ifc");
    new Memory(folder).keep(model, some);
    try (Stream<Path> files = Files.list(folder)) {
      Path kept = files.filter(f -> f.toString().endsWith(".json")).findFirst().orElseThrow();
      String old = "{\"kit\": \"rigid-vinyl\", \"accepted\": {\"too-flat: it is\": \"agreed\"}}";
      Files.writeString(kept, old);
    }
    assertThat(new Memory(folder).decisions(model).orElseThrow().accepted())
        .isEqualTo(Map.of("too-flat: it is", Acceptance.plain("agreed")));
  }

  @Test
  void settingsComeBackAsTheyWere() {
    Settings settings =
        Settings.FIRST
            .withTone(Tone.DARK)
            .withFontPercent(130)
            .withUnits(UnitSystem.IMPERIAL)
            .opened(Path.of("a.ifc"))
            .opened(Path.of("b.ifc"))
            .opened(Path.of("a.ifc"))
            .at(10, 20, 1000, 700)
            .withMaximized();
    new Memory(folder).keep(settings);
    assertThat(new Memory(folder).settings()).isEqualTo(settings);
    assertThat(settings.recent()).hasSize(2);
    assertThat(settings.recent().get(0)).endsWith("a.ifc");
  }

  @Test
  void aFileThatACrashLeftHalfIsNotTakenAndTheOneBeforeStays() throws IOException {
    Path model = Path.of("deck.ifc");
    Memory memory = new Memory(folder);
    memory.keep(model, some);
    try (Stream<Path> files = Files.list(folder)) {
      Path kept = files.filter(f -> f.toString().endsWith(".json")).findFirst().orElseThrow();
      Files.writeString(Path.of(kept + ".new"), "{\"kit\": \"gal");
      assertThat(memory.decisions(model)).contains(some);
      Files.writeString(kept, "{\"kit\": \"gal");
      assertThat(memory.decisions(model)).isEmpty();
    }
  }

  @Test
  void aFolderThatCannotBeWrittenStopsNobody() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "in the way");
    Memory memory = new Memory(file);
    memory.keep(Path.of("deck.ifc"), some);
    assertThat(memory.settings()).isEqualTo(Settings.FIRST);
  }

  @Test
  void whatCannotBeKeptIsToldUntilItCan() throws IOException, InterruptedException {
    Path guarded = Files.writeString(folder.resolve("state"), "a file where a folder should be");
    Screen screen = new Screen();
    try (Keeper keeper = new Keeper(new Memory(guarded), screen)) {
      keeper.keep(Path.of("deck.ifc"), some);
      screen.runNext();
      assertThat(keeper.lost().get()).contains(guarded.toString()).contains("Check the disk");
      Files.delete(guarded);
      keeper.keep(Path.of("deck.ifc"), some);
      screen.runNext();
      assertThat(keeper.lost().get()).isEmpty();
    }
  }
}
