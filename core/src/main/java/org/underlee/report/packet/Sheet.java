package org.underlee.report.packet;

import java.util.List;

/**
 * One subject of the packet: a bookmark, one or more pages.
 *
 * @param id {@code marks}: names files and places in the web page
 * @param title as in the bookmark
 * @param wide whether it is set on the paper turned on its side
 */
public record Sheet(String id, String title, boolean wide, List<Block> blocks) {
  public Sheet {
    blocks = List.copyOf(blocks);
  }
}
