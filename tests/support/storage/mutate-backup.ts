import { type Random, seeded } from '../seeded.ts';
import { below, oneOf, spoiltBytes } from '../spoilt-bytes.ts';
import { asJson, type Files, packed } from './made-backup.ts';

const odd: readonly unknown[] = [
  ...[null, true, '', -1, 0.5, 1e308, -1e308, 2 ** 53, 'x'.repeat(2000), '__proto__', '../../x'],
  ...[[], {}, [[]], { bytesAs: 'ArrayBuffer', base64: '!' }, { bytesAs: 'Map', base64: '' }],
  ...[
    { bytesAs: 'ArrayBuffer', base64: 'AAAA' },
    'paintings/0001/photo-0001.jpg',
    '0002',
    'a',
    's a',
  ],
];

/** All objects and lists within a value. */
function holders(value: unknown, found: Record<string, unknown>[] = []) {
  if (typeof value !== 'object' || value === null) return found;
  found.push(value as Record<string, unknown>);
  for (const inner of Object.values(value)) holders(inner, found);
  return found;
}

/** Null where an earlier change has spoilt it. */
function parsed(bytes: Uint8Array | undefined): unknown {
  try {
    return asJson(bytes);
  } catch {
    return null;
  }
}

/** One field of a file of JSON is changed, left out, doubled, or called by a name that reaches behind objects. */
export function changeJson(random: Random, files: Files): void {
  const names = [...files.keys()].filter((name) => name.endsWith('.json'));
  if (names.length === 0) return;
  const name = oneOf(random, names);
  const value: unknown = parsed(files.get(name));
  if (typeof value !== 'object' || value === null) return;
  const all = holders(value);
  const filled = all.filter((each) => Object.keys(each).length > 0);
  if (filled.length === 0) return;
  const holder = oneOf(random, filled);
  const key = oneOf(random, Object.keys(holder));
  let rename = '';
  switch (below(random, 6)) {
    case 0:
      delete holder[key];
      break;
    case 1:
      holder[key] = structuredClone(oneOf(random, all));
      break;
    case 2:
      rename = oneOf(random, ['__proto__', 'constructor', 'prototype', 'hasOwnProperty', 'x']);
      holder['to be renamed'] = { polluted: true, toString: 'no' };
      break;
    case 3:
      if (Array.isArray(holder)) holder.push(holder[below(random, holder.length)]);
      else holder[oneOf(random, ['id', 'paintingId', 'file', 'folder', 'x'])] = oneOf(random, odd);
      break;
    default:
      holder[key] = oneOf(random, odd);
  }
  let text = JSON.stringify(value);
  if (rename) text = text.replace('to be renamed', rename);
  if (random() < 0.05) text = `${'['.repeat(5000)}${text}`;
  files.set(name, new TextEncoder().encode(text));
}

/** Files left out, added, exchanged or called otherwise. */
function changeFiles(random: Random, files: Files): void {
  if (files.size === 0) return;
  const [one, other] = [oneOf(random, [...files.keys()]), oneOf(random, [...files.keys()])];
  const bytes = files.get(one) ?? new Uint8Array();
  switch (below(random, 5)) {
    case 0:
      files.delete(one);
      break;
    case 1:
      files.set(oneOf(random, ['../a.json', 'paintings/0009/painting.json', '/etc/x', 'a']), bytes);
      break;
    case 2:
      files.set(one, files.get(other) ?? bytes);
      files.set(other, bytes);
      break;
    case 3:
      files.set(one, bytes.slice(0, below(random, bytes.length)));
      break;
    default:
      files.delete(one);
      files.set(one.toUpperCase(), bytes);
  }
}

const asBlob = async (random: Random, copy: Blob): Promise<Blob> =>
  new Blob([spoiltBytes(random, new Uint8Array(await copy.arrayBuffer()))]);

/** A copy spoilt in one way, the same for the same seed: its bytes, or the files it is made of. */
export async function mutated(seed: number, copy: Blob, whole: Files): Promise<Blob> {
  const random = seeded(seed);
  if (random() < 0.35) return asBlob(random, copy);
  const files = new Map(whole);
  const change = random() < 0.75 ? changeJson : changeFiles;
  for (let i = 0; i <= below(random, 2); i++) change(random, files);
  try {
    return await packed(files, { trueSums: random() < 0.85, level: random() < 0.8 ? 6 : 0 });
  } catch {
    return asBlob(random, copy); // no manifest left to put right
  }
}
