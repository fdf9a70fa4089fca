// Finds all pairs of triangles that meet, of two sets that BvhSpeed wrote, with three-mesh-bvh.
// usage: node bvh.mjs FOLDER ; writes pairs.bin there and prints seconds
import fs from 'node:fs';
import path from 'node:path';
import { BufferGeometry, BufferAttribute, Matrix4 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';

const folder = process.argv[2];

function geometry(name) {
  const bytes = fs.readFileSync(path.join(folder, name));
  const floats = new Float32Array(bytes.buffer, bytes.byteOffset, bytes.length / 4);
  const g = new BufferGeometry();
  g.setAttribute('position', new BufferAttribute(new Float32Array(floats), 3));
  return g;
}

function run(write) {
  const a = geometry('a.bin');
  const b = geometry('b.bin');
  const start = process.hrtime.bigint();
  const treeA = new MeshBVH(a);
  const treeB = new MeshBVH(b);
  const built = process.hrtime.bigint();
  const pairs = [];
  treeA.bvhcast(treeB, new Matrix4(), {
    intersectsTriangles(t1, t2, i1, i2) {
      if (t1.intersectsTriangle(t2)) {
        pairs.push(i1, i2);
      }
      return false;
    },
  });
  const end = process.hrtime.bigint();
  if (write) {
    // the index was sorted with the tree: back to the numbers as given
    const original = (g, i) => g.index.getX(3 * i) / 3;
    const out = new Int32Array(pairs.length);
    for (let i = 0; i < pairs.length; i += 2) {
      out[i] = original(a, pairs[i]);
      out[i + 1] = original(b, pairs[i + 1]);
    }
    fs.writeFileSync(path.join(folder, 'pairs.bin'), Buffer.from(out.buffer));
  }
  return { build: Number(built - start) / 1e9, cast: Number(end - built) / 1e9, pairs: pairs.length / 2 };
}

const runs = Number(process.argv[3] ?? 3);
for (let i = 0; i < runs; i++) {
  const r = run(i === 0);
  console.log(`build ${r.build.toFixed(3)} s, pairs ${r.cast.toFixed(3)} s, ${r.pairs} pairs`);
}
