package org.underlee.writeback;

import java.util.Optional;

/**
 * What made an assembly, besides its kit, so that it can be made again.
 *
 * @param framingHash of the framing that was read: tells when the designer has changed it
 * @param assumed the joists that the user let the program assume where the model has a slab only
 */
public record Provenance(String programVersion, String framingHash, Optional<String> assumed) {}
