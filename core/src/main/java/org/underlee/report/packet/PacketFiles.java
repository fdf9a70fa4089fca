package org.underlee.report.packet;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import org.underlee.report.packet.pdf.PdfWriter;
import org.underlee.report.packet.web.WebPage;

/** The files of a packet by name: {@code packet.pdf}, {@code drawings/plan.svg}. */
public final class PacketFiles {
  private PacketFiles() {}

  public static Map<String, byte[]> of(Packet packet, Paper paper) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("packet.pdf", PdfWriter.write(packet, paper));
    files.put("packet.html", WebPage.write(packet).getBytes(StandardCharsets.UTF_8));
    files.put("marks.json", packet.marks().getBytes(StandardCharsets.UTF_8));
    DrawingFiles.into(files, packet);
    return files;
  }
}
