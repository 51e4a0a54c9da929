// Runs before `npm start` and `npm test`, on a machine that may have nothing but Node:
// only Node's own modules here.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const top = resolve(dirname(fileURLToPath(import.meta.url)), '..', '..');

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`This project needs Node.js 20.19 or newer; this is ${process.versions.node}.`);
  process.exit(1);
}

const lock = join(top, 'package-lock.json');
const mark = join(top, 'node_modules', '.installed-from');
const wanted = createHash('sha256')
  .update(readFileSync(lock))
  .update(`${process.platform} ${process.arch} ${process.versions.modules}`)
  .digest('hex');

if (!existsSync(mark) || readFileSync(mark, 'utf8') !== wanted) {
  console.log('Installing packages (npm ci) …');
  const npm = process.env.npm_execpath;
  const args = ['ci', '--no-audit', '--no-fund', '--loglevel=error'];
  const r = npm
    ? spawnSync(process.execPath, [npm, ...args], { cwd: top, stdio: 'inherit' })
    : spawnSync('npm', args, { cwd: top, stdio: 'inherit', shell: process.platform === 'win32' });
  if (r.status !== 0) {
    console.error('npm ci failed: the packages could not be installed.');
    process.exit(1);
  }
  writeFileSync(mark, wanted);
}

if (process.argv.includes('--browser')) {
  const { ensureChromium } = await import('../../tests/support/chromium.mjs');
  const path = ensureChromium();
  if (!path) process.exit(1);
  console.log(`Browser: ${path}`);
}
