// Opens files with web-ifc and gives the triangles of a product, in metres with z up.
import fs from 'node:fs';
import { IfcAPI } from 'web-ifc';

const LOG_OFF = 6;
const CIRCLE_SEGMENTS = 96; // a circle's area is then 0.07 % low, a pipe's box within 0.06 % of its diameter
const FLOATS_PER_VERTEX = 6; // position and normal

export const api = new IfcAPI();
await api.Init();
api.SetLogLevel(LOG_OFF);

export const minus = (p, q) => p.map((value, axis) => value - q[axis]);
export const cross = (u, v) => [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
export const dot = (u, v) => u[0] * v[0] + u[1] * v[1] + u[2] * v[2];

/** The corners of every triangle of a product. */
export function* trianglesOf(model, mesh) {
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

/** Calls with every file named on the standard input, opened; tells of those that cannot be read. */
export function eachFile(read) {
  for (const file of fs.readFileSync(0, 'utf8').split('\n').filter(Boolean)) {
    try {
      const model = api.OpenModel(new Uint8Array(fs.readFileSync(file)), { COORDINATE_TO_ORIGIN: false, CIRCLE_SEGMENTS });
      if (model < 0) throw new Error('not opened');
      read(model, file);
      api.CloseModel(model);
    } catch (problem) {
      console.log(JSON.stringify({ file, error: String(problem).replace(/\s+/g, ' ') }));
    }
  }
}
