import { describe, expect, it } from 'vitest';
import { paleWashAmount, tubeOf } from '../../../../../app/core/paint/measure/namesake.ts';
import { isWhiteOrBlack, type Paint } from '../../../../../app/core/paint/paint.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { otherHueInWords } from '../../../../../app/core/words/paint/measured-paint.ts';
import { paintNamed } from '../../../../support/paint/made-ladder.ts';

/** The paint in units of amount of its own. */
const inUnits = ({ K, S }: Paint, unit: number) => ({
  K: K.map((k) => k * unit),
  S: S.map((s) => s * unit),
});

describe('what the table tells of a measured tube', () => {
  it('the table itself has load 1 at the pale wash (data/pigment-optics.json)', () => {
    for (const paint of paintBox) {
      expect(paleWashAmount(paint), paint.id).toBeGreaterThan(0.98);
      expect(paleWashAmount(paint), paint.id).toBeLessThan(1.02);
    }
  });

  it('a paint of the table is its own namesake: load, strength and masstone', () => {
    for (const paint of paintBox.filter(({ ci }) => !isWhiteOrBlack(ci))) {
      const { perLoad, strength, mostLoad, question } = tubeOf(inUnits(paint, 3), paint);
      expect(perLoad * 3, paint.id).toBeCloseTo(1, 3);
      expect(strength, paint.id).toBe(paint.strength);
      expect(mostLoad, paint.id).toBeCloseTo(20 * strength, 9);
      expect(question, paint.id).toBeNull();
    }
  });

  it('a blue measured as quinacridone magenta is asked about, and keeps its own load', () => {
    const blue = paintNamed('pb153-phthalocyanine-blue');
    const { question, perLoad } = tubeOf(blue, { id: 'mine', ci: ['PR122'] });
    expect(question && otherHueInWords(question)).toMatch(
      /look blue, but quinacridone magenta, PR122 is (red|violet)\. Is this/,
    );
    expect(perLoad).toBeCloseTo(1, 1);
    const green = paintNamed('pg7-phthalocyanine-green');
    expect(tubeOf(green, { id: 'mine', ci: ['PR122'] }).question).toMatchObject({ looks: 'green' });
    expect(tubeOf(blue, { id: 'mine', ci: ['PB15:3'] }).question).toBeNull();
  });

  it('of two hues of one name it says so: never that they look blue but ought to be blue', () => {
    const blues = paintBox.filter(({ ci }) => ci.length === 1 && /^PB\d/.test(String(ci[0])));
    const asked = blues
      .flatMap((one) =>
        blues.flatMap((other) => tubeOf(one, { id: 'mine', ci: other.ci }).question ?? []),
      )
      .map(otherHueInWords);
    expect(
      asked.some((question) => /^These steps look another blue than .*, PB/.test(question)),
    ).toBe(true);
    for (const question of asked) expect(question).not.toMatch(/look (\w+), but .* is \1\./);
  });

  it('a pigment the table does not have leaves strength 1', () => {
    const paint = paintNamed('pbr7-burnt-sienna');
    expect(tubeOf(paint, { id: 'mine', ci: [] })).toMatchObject({
      strength: 1,
      mostLoad: 20,
      question: null,
    });
    expect(tubeOf(paint, { id: 'mine', ci: ['PB999'] })).toMatchObject({
      strength: 1,
      mostLoad: 20,
      question: null,
    });
  });
});
