import { expect, test } from 'vitest';
import { Room } from '../../../../app/core/raster/room.ts';

test('arrays lie one behind the other, each at a whole vector', () => {
  const room = new Room(new ArrayBuffer(256), 4);
  const bytes = room.bytes(3);
  const floats = room.floats(2);
  const doubles = room.doubles(1);
  const ints = room.ints(1);
  expect([bytes, floats, doubles, ints].map(({ byteOffset }) => byteOffset)).toEqual([
    16, 32, 48, 64,
  ]);
  expect([bytes, floats, doubles, ints].map(({ length }) => length)).toEqual([3, 2, 1, 1]);
  expect(ints.buffer).toBe(room.buffer);
});

test('what was given back is handed out again as it was left', () => {
  const room = new Room(new ArrayBuffer(64));
  const mark = room.mark();
  room.bytes(4).fill(7);
  room.giveBack(mark);
  expect([...room.bytes(4)]).toEqual([7, 7, 7, 7]);
});

test('where it is full, and where there is none, arrays are new ones', () => {
  const room = new Room(new ArrayBuffer(32));
  room.bytes(20).fill(1);
  const more = room.floats(5);
  expect(more).toEqual(new Float32Array(5));
  expect(more.buffer).not.toBe(room.buffer);
  expect(room.bytes(1).buffer).not.toBe(room.buffer); // 20 are taken in whole vectors
  expect(new Room().doubles(2)).toEqual(new Float64Array(2));
});
