package org.underlee.writeback;

/**
 * What made an assembly, so that it can be made again.
 *
 * @param framingHash of the framing that was read: tells when the designer has changed it
 */
public record Provenance(
    String programVersion, String kitId, String kitVersion, String framingHash) {}
