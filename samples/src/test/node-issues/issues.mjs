// Reads files of issues, one a line of standard input, and tells as JSON what is in them:
// an archive's topics as bcf-js reads them, or what the schema of SARIF says against a log.
import { readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);
const Ajv = require('ajv');
const readers = {
  '2.1': require('@parametricos/bcf-js/dist/2.1').BcfReader,
  '3.0': require('@parametricos/bcf-js').BcfReader,
};

async function topics(file, version) {
  const reader = new readers[version]();
  const bytes = readFileSync(file);
  await reader.read(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
  return reader.project.markups.map(({ topic, viewpoints }) => ({ topic, viewpoints }));
}

function faults(file) {
  const ajv = new Ajv({ schemaId: 'auto', allErrors: true });
  ajv.addMetaSchema(require('ajv/lib/refs/json-schema-draft-04.json'));
  const check = ajv.compile(require('@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json'));
  return check(JSON.parse(readFileSync(file))) ? [] : check.errors;
}

for await (const line of createInterface({ input: process.stdin })) {
  const [kind, file] = line.split('\t');
  console.log(JSON.stringify(kind === 'sarif' ? faults(file) : await topics(file, kind)));
}
