package org.underlee.misbuilt.ifc;

import org.underlee.misbuilt.framing.Roles;

/** A reader that knows more of the framing than its ports. */
public record KnowsRoles(Roles roles) {}
