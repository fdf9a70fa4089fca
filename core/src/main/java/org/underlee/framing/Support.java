package org.underlee.framing;

import org.underlee.geom.PlanShape;

/**
 * A member that carries or bounds joists, with its plan and heights in the field's frame.
 *
 * @param role ledger, rim, drop beam, flush beam or header
 */
public record Support(Member member, Role role, PlanShape shape, String why) {}
