package org.underlee.writeback;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.underlee.ifc.IfcSchema;

/** The block while it is being written: what every writer of a part of it shares. */
final class Draft {
  private final Host host;
  private final InstanceWriter out;
  private final GlobalIds ids;
  private final Set<String> used = new HashSet<>();
  private final Value ownerHistory;

  Draft(Host host, Provenance provenance) {
    this.host = host;
    this.out = new InstanceWriter(host.highestId());
    this.ids =
        new GlobalIds(provenance.told().getOrDefault(Provenance.PROJECT, host.projectGlobalId()));
    this.ownerHistory = ifc2x3() ? host.ownerHistory().orElseGet(this::ownHistory) : Value.UNSET;
  }

  Host host() {
    return host;
  }

  InstanceWriter out() {
    return out;
  }

  GlobalIds ids() {
    return ids;
  }

  /** Whether the older schema's fallbacks apply. */
  boolean ifc2x3() {
    return host.schema() == IfcSchema.IFC2X3;
  }

  /** An instance of a kind of IfcRoot, whose first four attributes are always the same. */
  Value root(String entity, String globalId, Value name, Value description, Value... rest) {
    if (!used.add(globalId)) {
      throw new IllegalArgumentException("two instances would have one GlobalId: " + entity);
    }
    Value[] first = {Value.text(globalId), ownerHistory, name, description};
    return out.add(entity, Stream.concat(Stream.of(first), Stream.of(rest)).toArray(Value[]::new));
  }

  /** The GlobalIds of all instances so far. */
  Set<String> globalIds() {
    return Set.copyOf(used);
  }

  /** The same with attributes in a list. */
  Value root(String entity, String globalId, Value name, Value description, List<Value> rest) {
    return root(entity, globalId, name, description, rest.toArray(Value[]::new));
  }

  /** A relationship: it has no name. */
  void relate(String entity, String globalId, Value... rest) {
    root(entity, globalId, Value.UNSET, Value.UNSET, rest);
  }

  /**
   * IFC2X3 demands an owner history. Ours says only which program wrote: NOCHANGE, because ADDED
   * would demand a date, and a date would make two runs differ.
   */
  private Value ownHistory() {
    Value name = Value.label("Underlee");
    List<Value> person = new ArrayList<>(List.of(Value.UNSET, name));
    while (person.size() < 8) {
      person.add(Value.UNSET);
    }
    Value organization =
        out.add("IfcOrganization", Value.UNSET, name, Value.UNSET, Value.UNSET, Value.UNSET);
    Value user =
        out.add(
            "IfcPersonAndOrganization",
            out.add("IfcPerson", person.toArray(Value[]::new)),
            organization,
            Value.UNSET);
    Value application = out.add("IfcApplication", organization, Value.label("1"), name, name);
    return out.add(
        "IfcOwnerHistory",
        user,
        application,
        Value.UNSET,
        Value.enumeration("NOCHANGE"),
        Value.UNSET,
        Value.UNSET,
        Value.UNSET,
        Value.integer(0));
  }
}
