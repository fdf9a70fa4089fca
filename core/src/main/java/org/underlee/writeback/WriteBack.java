package org.underlee.writeback;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.finding.StopSign;
import org.underlee.ifc.IfcModel;
import org.underlee.layout.Layout;
import org.underlee.step.StepFile;
import org.underlee.step.StepSplice;
import org.underlee.takeoff.Order;

/**
 * Writes laid-out assemblies into a copy of the designer's model, as one marked block of new
 * instances before the end of its data. Nothing of the designer's is changed, and the same input
 * gives the same bytes: no date is written.
 */
public final class WriteBack {
  private WriteBack() {}

  /** A drained model. */
  public static final class Written {
    private final byte[] bytes;
    private final Map<String, String> globalIds;
    private final int instances;

    Written(byte[] bytes, Map<String, String> globalIds, int instances) {
      this.bytes = bytes;
      this.globalIds = globalIds;
      this.instances = instances;
    }

    /** The bytes themselves, not a copy: only for reading. */
    public byte[] bytes() {
      return bytes;
    }

    /** GlobalIds by part id, in the order of the parts. */
    public Map<String, String> globalIds() {
      return Collections.unmodifiableMap(globalIds);
    }

    /** How many instances were added. */
    public int instances() {
      return instances;
    }
  }

  /**
   * The model with the assemblies and their bill.
   *
   * @param model without an earlier design: see {@link Strip}
   * @throws IllegalArgumentException when the model holds an earlier design, when a line counts a
   *     part that is not there or half a piece, or when two parts have one id
   * @throws java.util.NoSuchElementException when a part is cut from what the kit does not offer
   * @throws InputException when the model lacks what ours must refer to, or holds the same assembly
   *     without marks
   */
  public static Written drained(
      IfcModel model, Layout layout, List<BillLine> bill, Provenance provenance) {
    Order order = new Order(List.of(), List.of(), Optional.empty());
    return drained(model, layout, bill, order, provenance, List.of());
  }

  /**
   * As above, with what is ordered and what that costs where there are prices, and with what is in
   * the assembly's way.
   *
   * @param interferences with elements of this model; a file cannot point into another
   * @throws InputException in IFC2X3, which has no such relationship
   */
  public static Written drained(
      IfcModel model,
      Layout layout,
      List<BillLine> bill,
      Order order,
      Provenance provenance,
      List<Interference> interferences) {
    StepFile file = model.step();
    if (Strip.mayHold(file) && Markers.find(file.bytes()).isPresent()) {
      throw new IllegalArgumentException(
          file.name() + " holds an earlier design: strip it before the model is read");
    }
    if (layout.parts().isEmpty()) {
      return new Written(file.bytes(), Map.of(), 0);
    }
    StopSign stop = StopSign.here();
    BlockWriter block = new BlockWriter(new HostReader(model).read(), provenance);
    block.write(layout, bill, order);
    stop.obey();
    block.write(interferences);
    stop.obey();
    requireNew(file, block.allGlobalIds());
    stop.obey();
    List<String> lines = block.lines();
    byte[] bytes =
        lines.isEmpty() ? file.bytes() : StepSplice.insert(file, Block.text(file, lines));
    return new Written(bytes, block.globalIds(), lines.size());
  }

  /** Another program that saves a drained model keeps the assembly and drops the marks. */
  private static void requireNew(StepFile file, Set<String> globalIds) {
    GlobalIds.firstIn(file.bytes(), globalIds)
        .ifPresent(
            id -> {
              throw new InputException(
                  Place.NOWHERE.inFile(file.name()),
                  "the model already holds this assembly, without the marks around it: " + id,
                  "Maybe another program saved a drained model. Delete the assembly there, or"
                      + " begin with the designer's file.");
            });
  }
}
