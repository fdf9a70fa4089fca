package org.underlee.writeback;

/**
 * What made an assembly, besides its kit, so that it can be made again.
 *
 * @param framingHash of the framing that was read: tells when the designer has changed it
 */
public record Provenance(String programVersion, String framingHash) {}
