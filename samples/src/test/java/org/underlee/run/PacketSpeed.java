package org.underlee.run;

import java.util.Locale;
import java.util.Map;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.report.packet.Packet;
import org.underlee.report.packet.PacketBuilder;
import org.underlee.report.packet.PacketFiles;
import org.underlee.report.packet.Paper;
import org.underlee.report.packet.Writing;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.Mix;
import org.underlee.samples.SampleDecks;
import org.underlee.units.Lengths.UnitSystem;

/**
 * How long a packet takes from the model's bytes to the bytes of all its files, in a machine that
 * has just been started, and how large they are. Argument: the number of bays.
 */
public final class PacketSpeed {
  private static final double MILLION = 1e6;

  private PacketSpeed() {}

  public static void main(String[] args) {
    int bays = Integer.parseInt(args[0]);
    byte[] model = IfcEmitter.emit(SampleDecks.plain(3600, 406.4, bays + 1), Mix.PLAIN);
    long start = System.nanoTime();
    Design design =
        DeckRun.design(DeckRun.survey(model, "deck.ifc"), Scope.OUTSIDE, KitReader.builtIn());
    long designed = System.nanoTime();
    Packet packet = PacketBuilder.of(design, new Writing(UnitSystem.METRIC, "en"));
    long built = System.nanoTime();
    Map<String, byte[]> files = PacketFiles.of(packet, Paper.A4);
    long end = System.nanoTime();
    long bytes = files.values().stream().mapToLong(f -> f.length).sum();
    System.out.printf(
        Locale.ROOT,
        "%d bays: design %.0f ms, sheets %.0f ms, files %.0f ms, all %.0f ms;"
            + " %d files of %.2f MB, the PDF %.2f MB, the page %.2f MB%n",
        packet.bays().size(),
        (designed - start) / MILLION,
        (built - designed) / MILLION,
        (end - built) / MILLION,
        (end - start) / MILLION,
        files.size(),
        bytes / MILLION,
        files.get("packet.pdf").length / MILLION,
        files.get("packet.html").length / MILLION);
  }
}
