// Runs a function of a module of the project under plain Node: `node samples/run.mjs samples/make.ts writeSamples samples`.
import { createServer } from 'vite';

const [file, name, ...args] = process.argv.slice(2);
const server = await createServer({
  configFile: false,
  server: { middlewareMode: true, ws: false, watch: null },
  appType: 'custom',
  logLevel: 'error',
});
try {
  const module = await server.ssrLoadModule(`/${file}`);
  const result = await module[name](...args);
  console.log(typeof result === 'string' ? result : JSON.stringify(result, null, 1));
} finally {
  await server.close();
}
