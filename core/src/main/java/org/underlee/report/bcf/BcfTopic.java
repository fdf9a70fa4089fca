package org.underlee.report.bcf;

import java.util.List;
import java.util.Optional;

/**
 * What people said of an issue, as read from a BCF file.
 *
 * @param guid lower-case UUID
 * @param status as it stands there
 */
public record BcfTopic(
    String guid,
    String title,
    String type,
    String status,
    Optional<String> assignedTo,
    List<Comment> comments,
    List<String> selection) {
  public BcfTopic {
    comments = List.copyOf(comments);
    selection = List.copyOf(selection);
  }

  /** One comment. */
  public record Comment(String guid, String date, String author, String text) {}
}
