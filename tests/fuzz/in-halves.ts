import { spawn } from 'node:child_process';

/**
 * Runs a function of a module, which takes a count and a first number and gives JSON, over two halves of some numbers, each in a
 * process of its own, since a process uses one core. Throws Error if one of them ends with another status than 0.
 */
export function inHalves(
  module: string,
  name: string,
  count: number,
  first: number,
): Promise<readonly [string, string]> {
  const half = Math.floor(count / 2);
  return Promise.all([run(module, name, half, first), run(module, name, count - half, first + half)]);
}

function run(module: string, name: string, count: number, first: number): Promise<string> {
  const child = spawn(process.execPath, ['samples/run.mjs', module, name, String(count), String(first)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const parts: Buffer[] = [];
  child.stdout.on('data', (part: Buffer) => parts.push(part));
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (status) => {
      if (status === 0) resolve(Buffer.concat(parts).toString('utf8'));
      else reject(new Error(`The numbers from ${first} on ended with status ${status}.`));
    });
  });
}
