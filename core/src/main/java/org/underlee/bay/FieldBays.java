package org.underlee.bay;

import java.util.List;
import org.underlee.framing.Field;

/** A field with its bays, in order of u. */
public record FieldBays(Field field, List<Bay> bays) {}
