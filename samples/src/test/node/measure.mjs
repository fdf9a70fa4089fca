// Prints one JSON line per product that has a mesh: file, instance, class, GlobalId, box and volume in metres, z up,
// and "open": how far its area vectors are from summing to nothing, as a share of its area.
// A file that cannot be read is a line with "error".
// Usage: node measure.mjs [--triangles CLASS] < paths, one a line
// With --triangles, products of that class also carry their corners, nine numbers a triangle.
import { api, cross, dot, eachFile, minus, trianglesOf } from './meshes.mjs';

const NOT_SHOWN = /^Ifc(Space|OpeningElement|OpeningStandardCase)$/; // as the reader's own walk over all meshes has it

const wanted = process.argv[2] === '--triangles' ? process.argv[3].toUpperCase() : '';

function measure(model, mesh, keepCorners) {
  const triangles = [];
  const min = [Infinity, Infinity, Infinity];
  const max = [-Infinity, -Infinity, -Infinity];
  let [sixVolumes, area, sum, first] = [0, 0, [0, 0, 0], null];
  for (const corners of trianglesOf(model, mesh)) {
    if (keepCorners) triangles.push(...corners.flat());
    first ??= corners[0]; // volumes about a near point keep their digits far from the origin
    const [a, b, c] = corners.map((p) => minus(p, first));
    sixVolumes += dot(a, cross(b, c));
    const normal = cross(minus(b, a), minus(c, a));
    area += Math.hypot(...normal);
    sum = sum.map((value, axis) => value + normal[axis]);
    for (const p of corners) {
      for (let axis = 0; axis < 3; axis++) {
        min[axis] = Math.min(min[axis], p[axis]);
        max[axis] = Math.max(max[axis], p[axis]);
      }
    }
  }
  return first && { min, max, volume: sixVolumes / 6, open: Math.hypot(...sum) / area, triangles };
}

// One product at a time: its walk over all of a model at once does not come back from some models.
function products(model, file) {
  for (const { typeID, typeName } of api.GetAllTypesOfModel(model)) {
    if (!api.IsIfcElement(typeID) || NOT_SHOWN.test(typeName)) continue;
    const ids = api.GetLineIDsWithType(model, typeID);
    for (let i = 0; i < ids.size(); i++) {
      api.StreamMeshes(model, [ids.get(i)], (mesh) => {
        const measured = measure(model, mesh, typeName.toUpperCase() === wanted);
        if (measured) {
          const globalId = api.GetLine(model, mesh.expressID).GlobalId.value;
          console.log(JSON.stringify({ file, instance: mesh.expressID, type: typeName, globalId, ...measured }));
        }
      });
    }
  }
}

eachFile(products);
