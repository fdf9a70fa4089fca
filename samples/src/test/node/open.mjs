// Opens a model and makes all of its meshes, for measuring time and memory: see docs/benchmarks/survey.md.
// Usage: node open.mjs FILE
import fs from 'node:fs';
import { IfcAPI } from 'web-ifc';

const LOG_OFF = 6;

const api = new IfcAPI();
await api.Init();
api.SetLogLevel(LOG_OFF);
const model = api.OpenModel(new Uint8Array(fs.readFileSync(process.argv[2])), { COORDINATE_TO_ORIGIN: false });
let meshes = 0;
api.StreamAllMeshes(model, () => {
  meshes++;
});
console.log(`${meshes} meshes`);
