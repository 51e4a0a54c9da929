import { expect, it } from 'vitest';
import { isWhiteOrBlack, ladderLoads } from '../../../../app/core/paint/paint.ts';
import { paintBox, paintCard } from '../../../../app/core/paint/paint-box.ts';

it('holds 33 paints of 36 samples, none negative', () => {
  expect(paintBox).toHaveLength(33);
  expect(new Set(paintBox.map((paint) => paint.id)).size).toBe(33);
  for (const { id, K, S } of paintBox) {
    expect(K, id).toHaveLength(36);
    expect(S, id).toHaveLength(36);
    expect(Math.min(...K, ...S), id).toBeGreaterThanOrEqual(0);
  }
});

it('has names a painter would say', () => {
  for (const { name } of paintBox) expect(name).not.toMatch(/[()?]|only|unknown|measured/);
  const lemon = paintBox.find((paint) => paint.id === 'py175-lemon-yellow');
  expect(lemon?.name).toBe('lemon yellow');
  expect(lemon?.ci).toEqual(['PY175']);
});

it('warns of metals, and always sends to the label', () => {
  const of = (id: string) => paintBox.find((paint) => paint.id === id)?.properties;
  expect(of('pr108-cadmium-red')?.caution).toMatch(/cadmium.*label/);
  expect(of('pb28-cobalt-blue')?.caution).toMatch(/cobalt/);
  expect(of('pb29-ultramarine-blue')?.caution).toBeNull();
  expect(of('pb29-ultramarine-blue')?.staining).toBe(0);
  expect(of('pb27-prussian-blue')?.staining).toBe(2);
  expect(of('pbr7-burnt-umber')?.transparency).toBe('SO');
  for (const { properties } of paintBox) {
    if (properties.caution) expect(properties.caution).toMatch(/Check the label\.$/);
  }
});

it('makes a card with a ladder for every paint', () => {
  const cards = paintBox.map(paintCard);
  expect(cards).toHaveLength(33);
  for (const card of cards) {
    expect(card.ladder).toHaveLength(ladderLoads.length);
    expect(card.ladder.flat().every(Number.isFinite)).toBe(true);
  }
  expect(paintBox.filter((paint) => isWhiteOrBlack(paint.ci))).toHaveLength(4);
});
