package org.underlee.samples;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.underlee.samples.Project.Placed;
import org.underlee.samples.StepFile.Ref;
import org.underlee.samples.StepFile.Typed;

/**
 * Writes a sample as an IFC file in the way a {@link Mix} asks for. The same sample and mix give
 * the same bytes. GlobalIds depend on the sample alone.
 */
public final class IfcEmitter {
  /** Origin and turn of an assembly's placement: nowhere in particular. */
  private static final Frame ASSEMBLY = Frame.turned(new Xyz(500, 250, 0), 180);

  private final StepFile file = new StepFile();
  private final SampleDeck sample;
  private final Mix mix;
  private final Project project;
  private final Elements elements;
  private final Map<Integer, List<Ref>> contained = new TreeMap<>();
  private final Map<String, List<Ref>> byMaterial = new LinkedHashMap<>();

  private IfcEmitter(SampleDeck sample, Mix mix) {
    this.sample = sample;
    this.mix = mix;
    Geometry geometry = new Geometry(file, mix.unit());
    this.project = new Project(file, geometry, sample, mix);
    this.elements = new Elements(file, geometry, sample, mix, project);
  }

  public static byte[] emit(SampleDeck sample, Mix mix) {
    return new IfcEmitter(sample, mix).write();
  }

  private byte[] write() {
    boolean assembled = mix.classing() == Mix.Classing.ASSEMBLY;
    Map<String, List<Member>> fields = new LinkedHashMap<>();
    for (Member member : sample.members()) {
      if (assembled && member.role().isFraming()) {
        fields.computeIfAbsent(member.group(), g -> new ArrayList<>()).add(member);
      } else {
        contain(member.level(), element(member, project.placement(member.level())));
      }
    }
    fields.forEach(this::assembly);
    elements.writeTypes();
    relations();
    return file.bytes(sample.name() + ".ifc", mix);
  }

  private Ref element(Member member, Placed parent) {
    Ref written = elements.write(member, parent);
    byMaterial.computeIfAbsent(member.material(), m -> new ArrayList<>()).add(written);
    return written;
  }

  /** An assembly is in the storey of its joists; its parts are in the assembly only. */
  private void assembly(String group, List<Member> members) {
    int level =
        members.stream()
            .filter(m -> m.role() == Role.JOIST)
            .mapToInt(Member::level)
            .findFirst()
            .orElse(members.get(0).level());
    Placed storey = project.placement(level);
    Placed place = project.placed(storey, storey.world().then(ASSEMBLY));
    List<Ref> parts = members.stream().map(m -> element(m, place)).toList();
    Ref assembly =
        file.add(
            "IFCELEMENTASSEMBLY",
            sample.globalId("assembly/" + group),
            project.history(),
            mix.naming() == Mix.Naming.NONE ? StepFile.NONE : group,
            StepFile.NONE,
            "DECK FRAMING",
            place.placement(),
            StepFile.NONE,
            StepFile.NONE,
            StepFile.enumeration("SITE"),
            StepFile.enumeration("USERDEFINED"));
    project.aggregate("assembly/" + group, assembly, parts);
    contain(level, assembly);
  }

  private void contain(int level, Ref element) {
    contained.computeIfAbsent(level, l -> new ArrayList<>()).add(element);
  }

  private void relations() {
    contained.forEach(
        (level, inside) ->
            relate(
                "IFCRELCONTAINEDINSPATIALSTRUCTURE", "in/" + level, inside, project.storey(level)));
    byMaterial.forEach(
        (name, made) ->
            relate("IFCRELASSOCIATESMATERIAL", "material/" + name, made, material(name)));
    List<Ref> wood = byMaterial.values().iterator().next();
    relate("IFCRELDEFINESBYPROPERTIES", "notes", wood.subList(0, 1), notes());
  }

  private void relate(String entity, String key, List<Ref> related, Ref relating) {
    file.add(
        entity,
        sample.globalId("relation/" + key),
        project.history(),
        StepFile.NONE,
        StepFile.NONE,
        List.copyOf(related),
        relating);
  }

  private Ref material(String name) {
    return mix.schema().isOld()
        ? file.add("IFCMATERIAL", name)
        : file.add("IFCMATERIAL", name, StepFile.NONE, StepFile.NONE);
  }

  /** A property set with text outside ASCII, quotes and a backslash. */
  private Ref notes() {
    Ref treatment = property("Oberfläche", new Typed("IFCLABEL", "kesseldruckimprägniert, Ø 8 mm"));
    Ref remark = property("備考", new Typed("IFCTEXT", "木材 – see 'notes\\deck'"));
    return file.add(
        "IFCPROPERTYSET",
        sample.globalId("notes"),
        project.history(),
        "Carpenter notes",
        StepFile.NONE,
        List.of(treatment, remark));
  }

  private Ref property(String name, Typed value) {
    return file.add("IFCPROPERTYSINGLEVALUE", name, StepFile.NONE, value, StepFile.NONE);
  }
}
