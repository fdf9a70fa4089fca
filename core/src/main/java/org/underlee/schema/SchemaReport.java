package org.underlee.schema;

import java.util.List;
import org.underlee.finding.Finding;
import org.underlee.finding.Level;

/**
 * What a check by a schema found.
 *
 * @param schema {@code IFC4}
 * @param instances how many were checked
 * @param executed how many times a WHERE rule was executed
 * @param findings faults, and rules that could not be executed
 */
public record SchemaReport(String schema, int instances, long executed, List<Finding> findings) {
  /** The level of what breaks a schema. */
  public static final Level BROKEN = Level.ERROR;

  public SchemaReport {
    findings = List.copyOf(findings);
  }
}
