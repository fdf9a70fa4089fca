// Prints one JSON line per product that has a mesh: file, instance, class, GlobalId, box and volume in metres, z up,
// and "open": how far its area vectors are from summing to nothing, as a share of its area.
// A file that cannot be read is a line with "error".
// Usage: node measure.mjs [--triangles CLASS] < paths, one a line
// With --triangles, products of that class also carry their corners, nine numbers a triangle.
import fs from 'node:fs';
import { IfcAPI } from 'web-ifc';

const LOG_OFF = 6;
const CIRCLE_SEGMENTS = 96; // a circle's area is then 0.07 % low, a pipe's box within 0.06 % of its diameter
const FLOATS_PER_VERTEX = 6; // position and normal
const NOT_SHOWN = /^Ifc(Space|OpeningElement|OpeningStandardCase)$/; // as the reader's own walk over all meshes has it

const api = new IfcAPI();
await api.Init();
api.SetLogLevel(LOG_OFF);

const wanted = process.argv[2] === '--triangles' ? process.argv[3].toUpperCase() : '';
const minus = (p, q) => p.map((value, axis) => value - q[axis]);
const cross = (u, v) => [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
const dot = (u, v) => u[0] * v[0] + u[1] * v[1] + u[2] * v[2];

/** The corners of every triangle of a product. */
function* trianglesOf(model, mesh) {
  for (let k = 0; k < mesh.geometries.size(); k++) {
    const placed = mesh.geometries.get(k);
    const m = placed.flatTransformation;
    const geometry = api.GetGeometry(model, placed.geometryExpressID);
    const v = api.GetVertexArray(geometry.GetVertexData(), geometry.GetVertexDataSize());
    const index = api.GetIndexArray(geometry.GetIndexData(), geometry.GetIndexDataSize());
    // The reader has y up: IFC (x, y, z) is its (x, z, -y).
    const point = (i) => {
      const [x, y, z] = [v[i * FLOATS_PER_VERTEX], v[i * FLOATS_PER_VERTEX + 1], v[i * FLOATS_PER_VERTEX + 2]];
      const at = (row) => m[row] * x + m[row + 4] * y + m[row + 8] * z + m[row + 12];
      return [at(0), -at(2), at(1)];
    };
    for (let i = 0; i < index.length; i += 3) {
      yield [point(index[i]), point(index[i + 1]), point(index[i + 2])];
    }
    geometry.delete();
  }
}

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

for (const file of fs.readFileSync(0, 'utf8').split('\n').filter(Boolean)) {
  try {
    const model = api.OpenModel(new Uint8Array(fs.readFileSync(file)), { COORDINATE_TO_ORIGIN: false, CIRCLE_SEGMENTS });
    if (model < 0) throw new Error('not opened');
    products(model, file);
    api.CloseModel(model);
  } catch (problem) {
    console.log(JSON.stringify({ file, error: String(problem).replace(/\s+/g, ' ') }));
  }
}
