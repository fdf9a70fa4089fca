package org.underlee.report.packet;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.underlee.report.packet.pdf.PdfWriter;
import org.underlee.report.packet.pdf.SvgWriter;
import org.underlee.report.packet.web.WebPage;

/**
 * The files of a packet by name: {@code packet.pdf}, {@code drawings/plan.svg}, {@code
 * sheets/marks-2.svg}. As many are written at a time as there are processors; they are the same for
 * any number.
 */
public final class PacketFiles {
  private PacketFiles() {}

  public static Map<String, byte[]> of(Packet packet, Paper paper) {
    List<Supplier<Map<String, byte[]>>> tasks = new ArrayList<>();
    tasks.add(() -> Map.of("packet.pdf", PdfWriter.write(packet, paper)));
    DrawingFiles.of(packet).forEach((name, file) -> tasks.add(() -> Map.of(name, file.get())));
    tasks.add(() -> Map.of("packet.html", bytes(WebPage.write(packet))));
    tasks.add(() -> Map.of("marks.json", bytes(packet.marks())));
    tasks.add(() -> sheets(packet, paper));
    Map<String, byte[]> files = new LinkedHashMap<>();
    tasks.parallelStream().map(Supplier::get).toList().forEach(files::putAll);
    return files;
  }

  private static Map<String, byte[]> sheets(Packet packet, Paper paper) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    SvgWriter.write(packet, paper)
        .forEach((name, page) -> files.put("sheets/" + name + ".svg", bytes(page)));
    return files;
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
