// Prints one JSON line per element, relation, property set and quantity set of a model: its GlobalId, class and attributes.
// What has a GlobalId is told by it; what has none (properties, quantities, units) is told in full; shapes are left out.
// Usage: node rooted.mjs FILE
import fs from 'node:fs';
import { IfcAPI } from 'web-ifc';

const LOG_OFF = 6;
const REFERENCE = 5; // web-ifc's own number for a reference to a line
const LEFT_OUT = new Set(['expressID', 'type', 'GlobalId', 'Representation', 'RepresentationMaps', 'OwnerHistory']);

const api = new IfcAPI();
await api.Init();
api.SetLogLevel(LOG_OFF);
const model = api.OpenModel(new Uint8Array(fs.readFileSync(process.argv[2])));
if (model < 0) throw new Error('not opened');

const className = (line) => api.GetNameFromTypeCode(line.type);

const attributes = (line) =>
  Object.entries(line)
    .filter(([name]) => !LEFT_OUT.has(name))
    .map(([name, value]) => [name, told(value)]);

function told(value) {
  if (value === null || value === undefined) return null;
  if (Array.isArray(value)) return value.map(told);
  if (typeof value !== 'object') return value;
  if (value.type !== REFERENCE) return value.name ? [value.name, value.value] : value.value;
  const line = api.GetLine(model, value.value);
  // It takes a derived attribute, as of units, for a reference.
  if (!line) return ['not read', api.GetNameFromTypeCode(api.GetLineType(model, value.value))];
  return line.GlobalId ? `@${line.GlobalId.value}` : [className(line), attributes(line)];
}

const ids = api.GetAllLines(model);
for (let i = 0; i < ids.size(); i++) {
  const line = api.GetLine(model, ids.get(i));
  if (line?.GlobalId) {
    console.log(JSON.stringify({ globalId: line.GlobalId.value, class: className(line), attributes: attributes(line) }));
  }
}
