// Reads the bill that was written into models, and measures the meshes of what it counts. Prints JSON lines:
//   file, item, metres or pieces, and the GlobalIds of the elements counted: one a line of the bill
//   file, part (a GlobalId), type, mesh (the way that it runs, from where to where its longest line of edges, or a pan as a whole, goes; volume, area, how open), said (its quantities, in SI)
//   file, total (what the bill says) and sum (of units times price, of what is ordered)
// A file that cannot be read is a line with "error".
// Usage: node bill.mjs < paths, one a line
import * as ifc from 'web-ifc';
import { api, cross, dot, eachFile, minus, trianglesOf } from './meshes.mjs';

const PREFIX = { KILO: 1e3, DECI: 1e-1, CENTI: 1e-2, MILLI: 1e-3 };
const POWER = { LENGTHUNIT: 1, AREAUNIT: 2, VOLUMEUNIT: 3 };
const KIND = { Length: 'LENGTHUNIT', Area: 'AREAUNIT', Volume: 'VOLUMEUNIT', Weight: 'MASSUNIT', Count: '' };
const WELD = 1e5; // corners nearer than a hundredth of a millimetre are one
const FLAT = 0.9999; // faces that turn by less than 0.8 degrees are one face
const SAME_WAY = 0.99999; // edges within 0.26 degrees run the same way
const ASIDE = 1e4; // edges within a tenth of a millimetre are on one line
const FALLS = /^(pan|collar piece|collar-piece)$/; // longer across than along, maybe; they fall along
const GRAMS = 1000;

const length = (v) => Math.hypot(...v);
const unit = (v) => v.map((x) => x / length(v));
const print = (file, line) => console.log(JSON.stringify({ file, ...line }));

/** Where faces meet at an angle, or end: the two ends of each such edge, once. */
function creases(triangles) {
  const edges = new Map();
  const name = (p) => p.map((x) => Math.round(x * WELD)).join();
  for (const corners of triangles) {
    const normal = cross(minus(corners[1], corners[0]), minus(corners[2], corners[0]));
    if (length(normal) === 0) continue;
    for (let k = 0; k < 3; k++) {
      const ends = [corners[k], corners[(k + 1) % 3]];
      const key = ends.map(name).sort().join(' ');
      if (!edges.has(key)) edges.set(key, { ends, normals: [] });
      edges.get(key).normals.push(unit(normal));
    }
  }
  return [...edges.values()]
    .filter(({ ends, normals: n }) => length(minus(...ends)) > 1 / WELD && (n.length !== 2 || dot(n[0], n[1]) < FLAT))
    .map((e) => e.ends);
}

/** The way that most of a body's edges run, by their length; upward, or else to the right, or away. */
function axis(edges) {
  const ways = [];
  for (const ends of edges) {
    const to = unit(minus(...ends));
    const same = ways.find((w) => Math.abs(dot(w.to, to)) > SAME_WAY);
    if (same) same.sum += length(minus(...ends));
    else ways.push({ to, sum: length(minus(...ends)) });
  }
  const { to } = ways.reduce((best, w) => (w.sum > best.sum ? w : best));
  const sign = Math.sign([2, 0, 1].map((i) => to[i]).find((x) => Math.abs(x) > 1e-3));
  return to.map((x) => x * sign);
}

/** The way down the largest level of a sheet, which falls. */
function downhill(triangles) {
  const levels = [];
  for (const [a, b, c] of triangles) {
    const normal = cross(minus(b, a), minus(c, a));
    if (length(normal) === 0) continue;
    const same = levels.find((l) => dot(l.to, unit(normal)) > SAME_WAY);
    if (same) same.sum += length(normal);
    else levels.push({ to: unit(normal), sum: length(normal) });
  }
  const [x, y, z] = levels.reduce((best, l) => (l.sum > best.sum ? l : best)).to;
  return unit([x * z, y * z, -x * x - y * y]).map((value) => -value);
}

/** The longest stretch along a way that edges of one straight line reach over. */
function stretch(edges, way) {
  const lines = new Map();
  for (const ends of edges.filter((e) => Math.abs(dot(unit(minus(...e)), way)) > SAME_WAY)) {
    const at = ends.map((p) => dot(p, way));
    const aside = ends[0].map((x, i) => Math.round((x - at[0] * way[i]) * ASIDE)).join();
    const own = lines.get(aside) ?? lines.set(aside, [Infinity, -Infinity]).get(aside);
    own[0] = Math.min(own[0], ...at);
    own[1] = Math.max(own[1], ...at);
  }
  return [...lines.values()].reduce((best, own) => (own[1] - own[0] > best[1] - best[0] ? own : best));
}

function measured(model, mesh, falls) {
  const world = [...trianglesOf(model, mesh)];
  const first = world[0][0]; // sums about a near point keep their digits far from the origin
  const triangles = world.map((corners) => corners.map((p) => minus(p, first)));
  let [sixVolumes, area, sum] = [0, 0, [0, 0, 0]];
  for (const [a, b, c] of triangles) {
    sixVolumes += dot(a, cross(b, c));
    const normal = cross(minus(b, a), minus(c, a));
    area += length(normal) / 2;
    sum = sum.map((value, i) => value + normal[i] / 2);
  }
  const edges = creases(triangles);
  const way = falls ? downhill(triangles) : axis(edges);
  const along = triangles.flat().map((p) => dot(p, way));
  const ends = falls ? [Math.min(...along), Math.max(...along)] : stretch(edges, way);
  const [from, to] = ends.map((at) => at + dot(first, way));
  return { way, from, to, volume: sixVolumes / 6, area, open: length(sum) / area };
}

const line = (model, handle) => api.GetLine(model, handle.value);
const all = function* (model, type) {
  const ids = api.GetLineIDsWithType(model, type);
  for (let i = 0; i < ids.size(); i++) yield api.GetLine(model, ids.get(i));
};

/** How much of the SI unit a unit is; a mass in kilograms. */
function inSi(model, u) {
  if (u.ConversionFactor) {
    const factor = line(model, u.ConversionFactor);
    return factor.ValueComponent.value * inSi(model, line(model, factor.UnitComponent));
  }
  const prefix = PREFIX[u.Prefix?.value] ?? 1;
  return u.UnitType.value === 'MASSUNIT' ? prefix / GRAMS : prefix ** (POWER[u.UnitType.value] ?? 1);
}

function assigned(model) {
  const units = {};
  for (const { Units } of all(model, ifc.IFCUNITASSIGNMENT)) {
    for (const u of Units.map((handle) => line(model, handle)).filter((u) => u.UnitType)) {
      units[u.UnitType.value] ??= inSi(model, u);
    }
  }
  return units;
}

/** The number of a physical quantity in SI, and what it is one of. */
function quantity(model, units, q) {
  const kind = Object.keys(KIND).find((k) => q[`${k}Value`]);
  const factor = q.Unit ? inSi(model, line(model, q.Unit)) : (units[KIND[kind]] ?? 1);
  return { name: q.Name.value, kind, value: q[`${kind}Value`].value * factor };
}

/** Quantities by the instance that they are of, through IfcRelDefinesByProperties. */
function quantitySets(model, units) {
  const sets = new Map();
  for (const relation of all(model, ifc.IFCRELDEFINESBYPROPERTIES)) {
    const set = line(model, relation.RelatingPropertyDefinition);
    for (const { value } of set.Quantities ? relation.RelatedObjects : []) {
      const own = sets.get(value) ?? sets.set(value, []).get(value);
      own.push(...set.Quantities.map((q) => quantity(model, units, line(model, q))));
    }
  }
  return sets;
}

/** The amounts of money that hang on a cost item. */
function money(model, item) {
  const values = item.CostValues ?? [];
  for (const relation of all(model, ifc.IFCRELASSOCIATESAPPLIEDVALUE)) {
    if (relation.RelatedObjects.some((o) => o.value === item.expressID)) values.push(relation.RelatingAppliedValue);
  }
  return values.map((v) => line(model, line(model, v).AppliedValue).ValueComponent.value);
}

function bill(model, file) {
  const units = assigned(model);
  const sets = quantitySets(model, units);
  const counted = new Map();
  for (const relation of all(model, ifc.IFCRELASSIGNSTOCONTROL)) {
    counted.set(relation.RelatingControl.value, relation.RelatedObjects.map((o) => o.value));
  }
  const elements = new Set();
  let [total, sum] = [[], 0];
  for (const item of all(model, ifc.IFCCOSTITEM)) {
    const own = item.CostQuantities
      ? item.CostQuantities.map((q) => quantity(model, units, line(model, q)))
      : (sets.get(item.expressID) ?? []);
    const prices = money(model, item);
    if (own.length === 0) {
      total = prices;
    } else if (counted.has(item.expressID)) {
      const ids = counted.get(item.expressID);
      ids.forEach((id) => elements.add(id));
      print(file, {
        item: (item.Identification ?? item.ObjectType).value,
        kind: own[0].kind,
        value: own[0].value,
        elements: ids.map((id) => api.GetLine(model, id).GlobalId.value),
      });
    } else {
      sum += own[0].value * (prices[0] ?? 0);
    }
  }
  print(file, { total: total[0] ?? 0, sum });
  for (const id of elements) {
    const element = api.GetLine(model, id);
    const said = Object.fromEntries((sets.get(id) ?? []).map((q) => [q.name, q.value]));
    const part = { part: element.GlobalId.value, type: api.GetNameFromTypeCode(element.type), said };
    api.StreamMeshes(model, [id], (mesh) => {
      part.mesh = measured(model, mesh, FALLS.test(element.ObjectType.value));
    });
    print(file, part);
  }
}

eachFile(bill);
