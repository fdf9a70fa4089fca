package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.underlee.units.Lengths.UnitSystem;

/**
 * What the panel keeps from one start to the next.
 *
 * @param recent files, the newest first
 * @param maximized whether the window fills the screen; its place and size are those of before
 * @param fontPercent of the usual size of letters
 */
public record Settings(
    Tone tone,
    List<String> recent,
    double left,
    double top,
    double width,
    double height,
    boolean maximized,
    int fontPercent,
    java.util.Optional<UnitSystem> units) {
  private static final int MOST_RECENT = 8;

  public static final Settings FIRST =
      new Settings(
          Tone.LIGHT,
          List.of(),
          Double.NaN,
          Double.NaN,
          1440,
          900,
          false,
          100,
          java.util.Optional.empty());

  public Settings {
    recent = List.copyOf(recent);
  }

  public Settings opened(Path file) {
    List<String> next = new ArrayList<>(recent);
    String name = file.toAbsolutePath().normalize().toString();
    next.remove(name);
    next.add(0, name);
    return withRecent(next.subList(0, Math.min(MOST_RECENT, next.size())));
  }

  /** Without some of the recent files. */
  Settings without(List<String> files) {
    return withRecent(recent.stream().filter(f -> !files.contains(f)).toList());
  }

  private Settings withRecent(List<String> files) {
    return new Settings(tone, files, left, top, width, height, maximized, fontPercent, units);
  }

  public Settings withTone(Tone next) {
    return new Settings(next, recent, left, top, width, height, maximized, fontPercent, units);
  }

  /** Size of letters as a share of the usual. */
  public double letters() {
    return fontPercent / 100.0;
  }

  public Settings withFontPercent(int percent) {
    int kept = Math.max(75, Math.min(200, percent));
    return new Settings(tone, recent, left, top, width, height, maximized, kept, units);
  }

  public Settings withUnits(UnitSystem system) {
    return new Settings(
        tone,
        recent,
        left,
        top,
        width,
        height,
        maximized,
        fontPercent,
        java.util.Optional.of(system));
  }

  public Settings at(double x, double y, double w, double h) {
    return new Settings(tone, recent, x, y, w, h, false, fontPercent, units);
  }

  public Settings withMaximized() {
    return new Settings(tone, recent, left, top, width, height, true, fontPercent, units);
  }
}
