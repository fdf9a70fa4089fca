// Says what others see in our files, one JSON object: the topics of BCF files as @parametricos/bcf-js reads them, and
// what the schema of SARIF 2.1.0 (OASIS, kept in @microsoft/jest-sarif) has against a log.
// stdin: a path a line: .bcf21, .bcf30 or .sarif
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const require = createRequire(import.meta.url);
const Ajv = require("ajv");
const schema = require("@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json");
const readers = {
  bcf21: require("@parametricos/bcf-js/dist/2.1/index.js").BcfReader,
  bcf30: require("@parametricos/bcf-js").BcfReader,
};

async function topics(path, Reader) {
  const bytes = readFileSync(path);
  const reader = new Reader();
  await reader.read(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length));
  const all = [];
  for (const markup of reader.markups) {
    const view = markup.viewpoints[0];
    const picture = view ? await markup.getSnapshot(view.guid) : undefined;
    const camera = view?.perspective_camera ?? view?.orthogonal_camera;
    all.push({
      guid: markup.topic.guid,
      title: markup.topic.title,
      status: markup.topic.topic_status,
      selection: (view?.components?.selection ?? []).map(c => c.ifc_guid),
      camera: camera ? Object.values(camera.camera_view_point).map(Number) : [],
      picture: picture ? Buffer.from(picture, "base64").subarray(1, 4).toString("latin1") : "",
    });
  }
  return all;
}

const ajv = new Ajv({ allErrors: true, schemaId: "auto" });
const valid = ajv.compile(schema);
const said = {};
for (const path of readFileSync(0, "utf8").trim().split("\n")) {
  const ending = path.split(".").pop();
  if (ending === "sarif") {
    said[path] = valid(JSON.parse(readFileSync(path, "utf8"))) ? [] : valid.errors.map(e => `${e.dataPath} ${e.message}`);
  } else {
    said[path] = await topics(path, readers[ending]);
  }
}
console.log(JSON.stringify(said));
