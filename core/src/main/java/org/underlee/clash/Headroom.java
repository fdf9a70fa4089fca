package org.underlee.clash;

import java.util.ArrayList;
import java.util.List;
import org.underlee.clash.Theirs.Zone;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;

/** The room over a stair: every triangle that faces up, carried up by the headroom. */
public final class Headroom {
  /** Faces that look up at least this much (cosine of 45°) are trodden on. */
  private static final double LEVEL = 0.7071;

  private Headroom() {}

  /** The room over what is trodden on; a stair's own balusters are not. */
  public static List<Zone> over(Mesh stair, double headroom) {
    List<Zone> zones = new ArrayList<>();
    for (int t = 0; t < stair.triangleCount(); t++) {
      Vec3 normal = stair.areaNormal(t);
      if (normal.z() > LEVEL * normal.length() && normal.z() > 0) {
        Mesh prism = prism(stair.point(t, 0), stair.point(t, 1), stair.point(t, 2), headroom);
        zones.add(new Zone(Cause.HEADROOM, Solid.of(prism)));
      }
    }
    return zones;
  }

  private static Mesh prism(Vec3 a, Vec3 b, Vec3 c, double height) {
    double[] xyz = {
      a.x(),
      a.y(),
      a.z(),
      b.x(),
      b.y(),
      b.z(),
      c.x(),
      c.y(),
      c.z(),
      a.x(),
      a.y(),
      a.z() + height,
      b.x(),
      b.y(),
      b.z() + height,
      c.x(),
      c.y(),
      c.z() + height
    };
    int[] corners = {0, 2, 1, 3, 4, 5, 0, 1, 4, 0, 4, 3, 1, 2, 5, 1, 5, 4, 2, 0, 3, 2, 3, 5};
    return new Mesh(xyz, corners);
  }
}
