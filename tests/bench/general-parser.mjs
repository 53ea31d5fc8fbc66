// The job with a general CSV parser, streaming: `node general-parser.mjs INPUT OUT [STATE ...]` writes the changes of a poll with
// their bounds: of the parameters named, or of all without any.
import { createReadStream, createWriteStream } from 'node:fs';
import Papa from 'papaparse';

const [input, out, ...states] = process.argv.slice(2);
const isState = new Set(states);
const target = createWriteStream(out);
const before = new Map();
let isHeader = true;
Papa.parse(createReadStream(input, { highWaterMark: 65_536, encoding: 'utf8' }), {
  step: ({ data }) => {
    const [time, unit, parameter, value] = data;
    if (isHeader || parameter === undefined) {
      isHeader = false;
      return;
    }
    if (isState.size > 0 && !isState.has(parameter)) return;
    const key = `${unit},${parameter}`;
    const known = before.get(key);
    if (known === undefined) before.set(key, { value, time });
    else {
      if (known.value !== value) target.write(`${key},${value},${time},${known.time}\n`);
      known.value = value;
      known.time = time;
    }
  },
  complete: () => target.end(),
});
