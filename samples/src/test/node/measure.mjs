// Prints one JSON line per product that has a mesh: file, class, GlobalId, box and volume in metres, z up.
// A file that cannot be read is a line with "error".
// Usage: node measure.mjs [--triangles CLASS] FILE…
// With --triangles, products of that class also carry their corners, nine numbers a triangle.
import fs from 'node:fs';
import { IfcAPI } from 'web-ifc';

const LOG_OFF = 6;
const CIRCLE_SEGMENTS = 96; // a pipe's box is then within 0.06 % of its diameter
const FLOATS_PER_VERTEX = 6; // position and normal

const api = new IfcAPI();
await api.Init();
api.SetLogLevel(LOG_OFF);

function measure(model, mesh, keepCorners) {
  const triangles = [];
  const min = [Infinity, Infinity, Infinity];
  const max = [-Infinity, -Infinity, -Infinity];
  let sixVolumes = 0;
  let first = null;
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
      const corners = [point(index[i]), point(index[i + 1]), point(index[i + 2])];
      if (keepCorners) triangles.push(...corners.flat());
      first ??= corners[0]; // volumes about a near point keep their digits far from the origin
      const [a, b, c] = corners.map((p) => p.map((value, axis) => value - first[axis]));
      sixVolumes += a[0] * (b[1] * c[2] - b[2] * c[1])
        + a[1] * (b[2] * c[0] - b[0] * c[2])
        + a[2] * (b[0] * c[1] - b[1] * c[0]);
      for (const p of corners) {
        for (let axis = 0; axis < 3; axis++) {
          min[axis] = Math.min(min[axis], p[axis]);
          max[axis] = Math.max(max[axis], p[axis]);
        }
      }
    }
    geometry.delete();
  }
  return { min, max, volume: sixVolumes / 6, triangles };
}

const args = process.argv.slice(2);
const wanted = args[0] === '--triangles' ? args.splice(0, 2)[1] : '';

for (const file of args) {
  try {
    const model = api.OpenModel(new Uint8Array(fs.readFileSync(file)), { COORDINATE_TO_ORIGIN: false, CIRCLE_SEGMENTS });
    api.StreamAllMeshes(model, (mesh) => {
      const line = api.GetLine(model, mesh.expressID);
      const type = api.GetNameFromTypeCode(line.type);
      console.log(JSON.stringify({ file, type, globalId: line.GlobalId.value, ...measure(model, mesh, type.toUpperCase() === wanted) }));
    });
    api.CloseModel(model);
  } catch (problem) {
    console.log(JSON.stringify({ file, error: String(problem) }));
  }
}
