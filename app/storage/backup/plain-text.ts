import { damagedBackup } from './backup-problem.ts';

/** Bytes within a row, as text: how they are kept in the row, and base64 (RFC 4648). */
interface BytesAsText {
  readonly bytesAs: 'ArrayBuffer' | 'Uint8Array' | 'Uint8ClampedArray';
  readonly base64: string;
}

/** A row as JSON. Bytes stand in it as base64; throws a TypeError for what would not come back as it was. */
export function rowAsText(row: unknown): string {
  return JSON.stringify(row, (_key, value) => {
    if (value instanceof ArrayBuffer) return asText('ArrayBuffer', new Uint8Array(value));
    if (value instanceof Uint8ClampedArray) return asText('Uint8ClampedArray', value);
    if (value instanceof Uint8Array) return asText('Uint8Array', value);
    if (ArrayBuffer.isView(value) || value instanceof Map || value instanceof Set)
      throw new TypeError(`A row holds a ${value.constructor.name}, which a copy can't.`);
    return value;
  });
}

const chunkLength = 0x8000; // as many arguments as every browser takes

function asText(bytesAs: BytesAsText['bytesAs'], bytes: ArrayLike<number>): BytesAsText {
  const texts: string[] = [];
  for (let from = 0; from < bytes.length; from += chunkLength) {
    const part = Array.prototype.slice.call(bytes, from, from + chunkLength) as number[];
    texts.push(String.fromCharCode(...part));
  }
  return { bytesAs, base64: btoa(texts.join('')) };
}

/** Deeper than any row goes (own). */
const deepest = 40;

/** Names that reach behind an object: no row has them. */
const strangeNames: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

/**
 * What such a text holds: plain objects, lists, figures, words and bytes. Throws a BackupProblem where it is no JSON,
 * goes too deep, or has names no row has.
 */
export function rowFromText(text: string): unknown {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (fault) {
    throw damagedBackup(`no JSON: ${fault}`);
  }
  return withBytes(value, 0);
}

function withBytes(value: unknown, depth: number): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (depth > deepest) throw damagedBackup('goes too deep');
  if (Array.isArray(value)) {
    for (let i = 0; i < value.length; i++) value[i] = withBytes(value[i], depth + 1);
    return value;
  }
  const fields = value as Record<string, unknown>;
  for (const name of Object.keys(fields)) {
    if (strangeNames.has(name)) throw damagedBackup(`a field is called ${name}`);
    fields[name] = withBytes(fields[name], depth + 1);
  }
  return 'bytesAs' in fields ? bytesOf(fields) : fields;
}

function bytesOf({ bytesAs, base64 }: Record<string, unknown>): ArrayBuffer | ArrayBufferView {
  if (typeof base64 !== 'string') throw damagedBackup('bytes without text');
  let text: string;
  try {
    text = atob(base64);
  } catch (fault) {
    throw damagedBackup(`no base64: ${fault}`);
  }
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i);
  if (bytesAs === 'ArrayBuffer') return bytes.buffer;
  if (bytesAs === 'Uint8Array') return bytes;
  if (bytesAs === 'Uint8ClampedArray') return new Uint8ClampedArray(bytes.buffer);
  throw damagedBackup('bytes of an unknown kind');
}
