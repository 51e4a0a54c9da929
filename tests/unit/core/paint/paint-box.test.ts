import { expect, it } from 'vitest';
import { isWhiteOrBlack, ladderShares } from '../../../../app/core/paint/paint.ts';
import { paintBox, paintCard, placeAmongOwned } from '../../../../app/core/paint/paint-box.ts';
import { card, cards } from '../../../support/paint/cards.ts';

it('holds 112 paints of 36 samples, none negative, each with its strength', () => {
  expect(paintBox).toHaveLength(112);
  expect(new Set(paintBox.map((paint) => paint.id)).size).toBe(112);
  for (const { id, K, S, strength, mostLoad } of paintBox) {
    expect(K, id).toHaveLength(36);
    expect(S, id).toHaveLength(36);
    expect(Math.min(...K, ...S), id).toBeGreaterThanOrEqual(0);
    expect(Math.min(strength ?? 0, mostLoad ?? 0), id).toBeGreaterThan(0);
  }
});

it('has names a painter would say, each once', () => {
  for (const { name } of paintBox)
    expect(name).not.toMatch(/[(),?]|only|unknown|measured|undefined/);
  expect(new Set(paintBox.map(({ name }) => name)).size).toBe(112);
  expect(card('hue-lemon-yellow')).toMatchObject({ name: 'lemon yellow hue', ci: [] });
  expect(card('pr149-perylene-red').name).toBe('perylene red PR149');
});

// Metals, staining and lightfastness: from memory, but for what the table marks as published (its `columnSources`).
it('warns of metals that can harm', () => {
  const of = (id: string) => card(id).properties;
  expect(of('pr108-cadmium-red').caution).toMatch(
    /^Contains cadmium and selenium: poison if swallowed/,
  );
  expect(of('pb28-cobalt-blue').caution).toMatch(/cobalt/);
  expect(of('ready-sap-green').caution).toMatch(/nickel/);
  for (const id of ['pb29-ultramarine-blue', 'pb153-phthalocyanine-blue', 'pg18-viridian'])
    expect(of(id).caution).toBeNull();
  expect(of('pb27-prussian-blue').staining).toBe(2);
});

it('says where lightfastness comes from, and that it is not settled', () => {
  const of = (id: string) => card(id).properties.lightfastness;
  expect(of('pb29-ultramarine-blue')).toBe('I (from memory)');
  expect(of('py153-nickel-dioxine')).toBe('I to II (from memory; not settled)');
  expect(of('pv23-dioxazine-violet')).toMatch(/published/);
  expect(of('pv23-dioxazine-violet')).not.toMatch(/memory/);
  expect(of('py83-diarylide-yellow')).toBeNull();
});

it('says what a ready-mixed tube is made of; its main pigments say how much light it lets through', () => {
  expect(card('ready-sap-green')).toMatchObject({
    ci: ['PG7', 'PY150', 'PBr7'],
    madeOf: [
      { ci: 'PG7', parts: 1 },
      { ci: 'PY150', parts: 6 },
      { ci: 'PBr7', parts: 1 },
    ],
  });
  expect(card('ready-sap-green').properties.transparency).toBe('T');
});

it('has 25 paints that boxes hold most often, in order', () => {
  const listed = cards.filter((each) => each.placeAmongOwned !== undefined);
  expect(listed.map((each) => each.placeAmongOwned).sort((a, b) => Number(a) - Number(b))).toEqual(
    Array.from({ length: 25 }, (_, n) => n),
  );
  expect(placeAmongOwned('pb29-ultramarine-blue')).toBe(0);
  expect(placeAmongOwned('pb16-phthalocyanine-turquoise')).toBe(-1);
});

it('makes a card with a ladder for every paint', () => {
  for (const each of paintBox.map(paintCard)) {
    expect(each.ladder).toHaveLength(ladderShares.length);
    expect(each.ladder.flat().every(Number.isFinite)).toBe(true);
  }
  expect(paintBox.filter((paint) => isWhiteOrBlack(paint.ci))).toHaveLength(7);
});
