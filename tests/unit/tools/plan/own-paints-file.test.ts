import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { parseOwnPaints, readOwnPaints } from '../../../../app/tools/plan/own-paints-file.ts';
import { planOptions, wishesFromOptions } from '../../../../app/tools/plan/plan-options.ts';

const folder = mkdtempSync(join(tmpdir(), 'own-paints-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const numbers = (value: unknown = 0.5): unknown[] => new Array(36).fill(value);
const blue = { id: 'my-blue', name: 'my blue', ci: ['pb29'], K: numbers(), S: numbers(0) };

function written(text: string): string {
  const file = join(folder, 'paints.json');
  writeFileSync(file, text);
  return file;
}

test('a paint as documented; properties left out are those remembered of its pigments', async () => {
  const properties = { staining: 2, caution: null };
  const [plain, own] = await readOwnPaints(
    written(JSON.stringify({ paints: [blue, { ...blue, id: 'b2', properties }] })),
  );
  expect(plain).toMatchObject({ id: 'my-blue', ci: ['PB29'], K: blue.K, S: blue.S });
  expect(plain?.properties).toMatchObject({ transparency: 'ST', staining: 1, granulation: 2 });
  expect(own?.properties).toMatchObject({ transparency: 'ST', staining: 2, granulation: 2 });
});

test('strength is 1 where it is not said, the masstone a full coat of 20 ml', () => {
  const entries = [
    blue,
    { ...blue, id: 'b2', strength: 2.5 },
    { ...blue, id: 'b3', strength: 2, mostLoad: 30 },
  ];
  const { paints } = parseOwnPaints({ paints: entries });
  expect(paints.map(({ strength, mostLoad }) => [strength, mostLoad])).toEqual([
    [1, 20],
    [2.5, 50],
    [2, 30],
  ]);
});

// Names every object has: CWE-1321 (MITRE), properties of the prototype taken for one's own.
test.each(['toString', 'constructor', '__proto__', 'valueOf', 'hasOwnProperty'])(
  'a property called %s is one it does not know, no fault of the program',
  (name) => {
    const entry = JSON.parse(JSON.stringify({ ...blue, properties: {} })) as { properties: object };
    Object.defineProperty(entry.properties, name, { value: 1, enumerable: true });
    expect(parseOwnPaints({ paints: [entry] }).faults).toEqual([
      expect.stringContaining(`properties: "${name}" is not one of`),
    ]);
  },
);

test('a byte order mark before the JSON is passed over', async () => {
  const text = `\uFEFF${JSON.stringify({ paints: [blue] })}`;
  expect(await readOwnPaints(written(text))).toHaveLength(1);
});

describe('a fault is one line that names the paint', () => {
  test.each([
    [{ ...blue, K: numbers().slice(1) }, 'paint "my-blue": K must be 36 numbers, not 35'],
    [{ ...blue, S: undefined }, 'paint "my-blue": S is missing'],
    [{ ...blue, S: numbers(-0.1) }, 'paint "my-blue": S: number 1 is negative'],
    [{ ...blue, K: numbers(null) }, 'paint "my-blue": K: number 1 is not a finite number'],
    [{ ...blue, K: numbers('1') }, 'paint "my-blue": K: number 1 is not a finite number'],
    [{ ...blue, K: numbers(1e308) }, 'paint "my-blue": K: number 1 must be 1000000 at the most'],
    [{ ...blue, mostLoad: 1e7 }, 'mostLoad must be a number above 0, 1000000 at the most'],
    [{ ...blue, id: undefined }, 'paint 1: id is missing'],
    [{ ...blue, id: 'a,b' }, 'paint "a,b": id must have no blanks or commas'],
    [{ ...blue, id: 'pb29-ultramarine-blue' }, 'a built-in paint has this id'],
    [{ ...blue, name: ' ' }, 'paint "my-blue": name is missing'],
    [{ ...blue, ci: 'PB29' }, 'paint "my-blue": ci must be Colour Index names'],
    [{ ...blue, ci: ['PB29', 'blue'] }, 'paint "my-blue": ci: "blue" is no Colour Index name'],
    [{ ...blue, strength: 0 }, 'paint "my-blue": strength must be a number above 0'],
    [{ ...blue, strength: '2' }, 'paint "my-blue": strength must be a number above 0'],
    [{ ...blue, mostLoad: -1 }, 'paint "my-blue": mostLoad must be a number above 0'],
    [{ ...blue, properties: { staining: 3 } }, 'properties: staining must be 0, 1, 2 or null'],
    [{ ...blue, properties: { hue: 1 } }, 'properties: "hue" is not one of'],
    ['blue', 'paint 1: must be an object'],
  ])('%#: %s', (entry, line) => {
    const { faults } = parseOwnPaints({ paints: [entry] });
    expect(faults).toHaveLength(1);
    expect(faults[0]).toContain(line);
  });

  test('an id there twice, an empty list, another shape', () => {
    expect(parseOwnPaints({ paints: [blue, blue] }).faults).toEqual([
      'paint "my-blue": this id is there twice, give it another',
    ]);
    expect(parseOwnPaints({ paints: [] }).faults[0]).toMatch(/empty/);
    expect(parseOwnPaints([blue]).faults[0]).toMatch(/must hold an object/);
  });

  test('what can not be read; several faults are still one line', async () => {
    await expect(readOwnPaints(join(folder, 'none.json'))).rejects.toThrow(/no such file/);
    await expect(readOwnPaints(written('{'))).rejects.toThrow(/not JSON/);
    const two = JSON.stringify({ paints: [{ ...blue, name: '', S: [] }] });
    await expect(readOwnPaints(written(two))).rejects.toThrow(
      /^--paints .*name is missing \(and 1 more: .*S must be 36 numbers, not 0\)$/,
    );
  });
});

test('paints of a file count as if named: used as they are, or chosen from', () => {
  const { paints } = parseOwnPaints({
    paints: [blue, { ...blue, id: 'b2' }, { ...blue, id: 'b3' }],
  });
  const options = planOptions(['a.jpg', '--paints', 'x/mine.json']);
  expect(options).toMatchObject({ paintsFile: 'x/mine.json' });
  expect(options.paints).toBeUndefined();
  expect(wishesFromOptions(options, ['a'], paints)).toEqual({
    chosen: ['my-blue', 'b2', 'b3'],
    ownPaints: paints,
  });
  expect(wishesFromOptions({ ...options, palette: 2 }, ['a'], paints)).toEqual({
    box: ['my-blue', 'b2', 'b3'],
    paletteSize: 2,
    ownPaints: paints,
  });
});
