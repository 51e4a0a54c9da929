// `npm run icons`: renders the PNG icons from icons/icon.svg and icons/icon-monochrome.svg, after one was changed.
import { readFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';

const folder = join(resolve(dirname(fileURLToPath(import.meta.url)), '..', '..'), 'icons');
const drawing = await readFile(join(folder, 'icon.svg'), 'utf8');
const paper = '#fdfdfd';
// Full bleed: these are cut to a shape by the system, so the sheet must not have round corners of its own.
const bleed = drawing.replace('rx="96"', 'rx="0"');

async function render(svg, px, name, partOfSide = 1) {
  const inner = Math.round(px * partOfSide);
  const before = Math.floor((px - inner) / 2);
  const after = px - inner - before;
  await sharp(Buffer.from(svg), { density: (72 * inner) / 512 })
    .resize(inner, inner)
    .extend({ top: before, left: before, bottom: after, right: after, background: paper })
    .png({ compressionLevel: 9, palette: false })
    .toFile(join(folder, name));
}

await render(drawing, 192, 'icon-192.png');
await render(drawing, 512, 'icon-512.png');
await render(bleed, 180, 'apple-touch-icon-180.png');
// The safe zone of a maskable icon is a circle of 80 % of the side (W3C, Web Application Manifest).
await render(bleed, 512, 'icon-maskable-512.png', 0.78);
// Only how opaque it is counts (W3C, Web Application Manifest): the system gives it a colour.
const monochrome = await readFile(join(folder, 'icon-monochrome.svg'));
await sharp(monochrome, { density: 72 })
  .resize(512, 512)
  .png({ compressionLevel: 9 })
  .toFile(join(folder, 'icon-monochrome-512.png'));
