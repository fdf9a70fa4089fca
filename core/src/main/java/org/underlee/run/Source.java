package org.underlee.run;

/**
 * The file that a run reads.
 *
 * @param file its name, without folders
 * @param sha256 of the bytes as given, lower-case hexadecimal
 * @param ifcSchema {@code IFC4}
 * @param lengthUnit {@code FOOT}
 */
public record Source(String file, String sha256, String ifcSchema, String lengthUnit) {}
