import { expect, test } from 'vitest';
import { pigmentTable } from '../../../../app/core/paint/paint-box.ts';
import {
  builtInOfName,
  type DraftKnowledge,
  draftOf,
  emptyDraft,
  paintsOfSamePigment,
  paintsToPickFrom,
  settleDraft,
} from '../../../../app/core/paint/paint-draft.ts';
import { card, cards } from '../../../support/paint/cards.ts';

const known: DraftKnowledge = { cards, table: pigmentTable, measured: false };

test('an empty draft says all that is missing', () => {
  const { problems } = settleDraft(emptyDraft, known);
  expect(problems.name).toMatch(/no name yet/);
  expect(problems.ci).toMatch(/missing/);
  expect(problems.like).toMatch(/pick the built-in paint/);
});

test('one name of a built-in paint: its properties, its optics, all as commonly given', () => {
  const made = settleDraft({ ...emptyDraft, name: '  My   blue ', ci: 'pb29' }, known);
  expect(made).toMatchObject({ name: 'My blue', ci: ['PB29'], like: 'pb29-ultramarine-blue' });
  expect(made.properties).toEqual(card('pb29-ultramarine-blue').properties);
  expect(made.fromMemory).toHaveLength(5);
  expect(Object.values(made.problems)).toEqual([null, null, null]);
});

test('of several paints of one pigment that with a name like hers is proposed', () => {
  const like = (name: string) => settleDraft({ ...emptyDraft, name, ci: 'PBr7' }, known).like;
  expect(like('Burnt Umber Light')).toBe('pbr7-burnt-umber');
  expect(like('Raw Sienna')).toBe('pbr7-raw-sienna');
  expect(paintsOfSamePigment(['PBr7'], '', cards)).toHaveLength(4);
});

test('a substitute is proposed only to who calls hers one', () => {
  const like = (name: string) => settleDraft({ ...emptyDraft, name, ci: 'PB29' }, known).like;
  expect(like('French blue')).toBe('pb29-ultramarine-blue');
  expect(like('Cobalt blue hue')).toBe('hue-cobalt-blue');
});

test('a tube of the pigments of a ready-mixed one is like it; its very name is known as built-in', () => {
  const draft = { ...emptyDraft, name: 'Sap Green ', ci: 'PBr7, PG7, PY150' };
  expect(settleDraft(draft, known).like).toBe('ready-sap-green');
  expect(builtInOfName(draft.name, cards)?.id).toBe('ready-sap-green');
  expect(builtInOfName('sap', cards)).toBeNull();
  expect(builtInOfName('', cards)).toBeNull();
});

test('names may be missing only where nobody tells the pigments', () => {
  const untold = { ...emptyDraft, name: 'my lemon', like: 'hue-lemon-yellow' };
  expect(settleDraft(untold, known).problems).toEqual({ name: null, ci: null, like: null });
  expect(settleDraft({ ...untold, like: 'py3-arylide-yellow' }, known).problems.ci).toMatch(
    /missing/,
  );
  expect(settleDraft({ ...untold, ci: 'yellow' }, known).problems.ci).toMatch(/no Colour Index/);
  const typed = settleDraft({ ...emptyDraft, name: 'x' }, { ...known, measured: true });
  expect(typed.problems.ci).toBeNull();
});

test('properties are those of the paint it is like, where its pigments are the same or nobody tells them', () => {
  const like = 'hue-lemon-yellow';
  const settled = (ci: string, otherwise: Partial<DraftKnowledge> = {}, alike: string = like) =>
    settleDraft({ ...emptyDraft, name: 'x', ci, like: alike }, { ...known, ...otherwise });
  expect(settled('').properties).toEqual(card(like).properties);
  // Pigments told: they count, whatever it looks like.
  const green = settled('PG7', {}, 'pb29-ultramarine-blue').properties;
  expect(green).toEqual(settleDraft({ ...emptyDraft, name: 'x', ci: 'PG7' }, known).properties);
  expect(green).not.toEqual(card('pb29-ultramarine-blue').properties);
  expect(settled('PB29', {}, 'pb29-ultramarine-blue').properties).toEqual(
    card('pb29-ultramarine-blue').properties,
  );
  // A measured one without names is like what she picked; without a pick nothing is known.
  const measured = { measured: true };
  expect(settled('', measured, 'pb29-ultramarine-blue').properties).toEqual(
    card('pb29-ultramarine-blue').properties,
  );
  expect(settled('', measured, '').properties.transparency).toBeNull();
});

test('a paint picked that is built in no more has to be picked anew', () => {
  const gone = { ...emptyDraft, name: 'x', ci: 'PG36, PY35', like: 'py175-lemon-yellow' };
  expect(settleDraft(gone, known)).toMatchObject({ like: null });
});

test('she looks through all built-in paints, those of her pigment and of like letters first', () => {
  const order = paintsToPickFrom(['PB28'], '', cards).map(({ id }) => id);
  expect(new Set(order).size).toBe(cards.length);
  expect(order[0]).toBe('pb28-cobalt-blue');
  const blues = order.slice(0, 13);
  expect(blues.every((id) => card(id).ci.some((name) => /^PB\d/.test(name)))).toBe(true);
});

test('a mixed tube takes the worst of its pigments, and she picks what it looks like', () => {
  const draft = { ...emptyDraft, name: 'green gold', ci: 'PG36, PY35' };
  const made = settleDraft(draft, known);
  expect(made.properties).toMatchObject({ transparency: 'SO', staining: 2, granulation: 0 });
  expect(made.properties.caution).toMatch(/cadmium/);
  expect([made.like, made.problems.like]).toEqual([null, expect.stringContaining('pick')]);
  expect(settleDraft({ ...draft, like: 'py83-diarylide-yellow' }, known).problems.like).toBeNull();
  expect(settleDraft(draft, { ...known, measured: true }).problems.like).toBeNull();
});

test('what she says herself stays, and is no longer from memory', () => {
  const draft = {
    ...emptyDraft,
    name: 'x',
    ci: 'PB29',
    hers: { staining: 1, caution: null },
  } as const;
  const made = settleDraft(draft, known);
  expect(made.properties.staining).toBe(1);
  expect(made.fromMemory).toEqual(['transparency', 'granulation', 'lightfastness']);
  const { name, ci, properties, fromMemory } = made;
  const like = { from: 'like', id: 'pb29-ultramarine-blue' } as const;
  const paint = {
    id: 'own-1',
    revision: 1,
    name,
    ci,
    properties,
    fromMemory,
    optics: like,
    K: [],
    S: [],
  };
  expect(draftOf(paint)).toEqual({ ...draft, like: 'pb29-ultramarine-blue' });
});
