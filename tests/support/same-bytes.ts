// Maps of a picture are compared number by number otherwise, half a second each.
import { expect } from 'vitest';

const bytesOf = (view: ArrayBufferView): Uint8Array =>
  new Uint8Array(view.buffer, view.byteOffset, view.byteLength);

/** Equal bytes of one kind of array are equal numbers; of all else the usual comparison decides. */
function sameBytes(one: unknown, other: unknown): true | undefined {
  if (!ArrayBuffer.isView(one) || !ArrayBuffer.isView(other)) return undefined;
  if (one.constructor !== other.constructor) return undefined;
  return Buffer.compare(bytesOf(one), bytesOf(other)) === 0 ? true : undefined;
}

expect.addEqualityTesters([sameBytes]);
