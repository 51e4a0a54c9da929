import { expect, test } from 'vitest';
import vectors from '../../../fixtures/drying-vectors.json' with { type: 'json' };
import { dewPoint, humidityRatio, wetBulb } from '../../../support/drying/psychrometer.ts';

test('our vapour pressure gives the moist air of the engineers tables at 20 C and 60 %', () => {
  // Source: figures of PsychroLib 1.1 (D. Meyer, D. Thevenard 2019) at 101325 Pa; it rests on the
  // ASHRAE Handbook of Fundamentals 2017: 8.7345 g/kg, wet bulb 15.144 C, dew point 12.008 C.
  expect(Math.abs(humidityRatio(20, 60) / 8.7345 - 1)).toBeLessThan(0.001);
  expect(Math.abs(dewPoint(20, 60) - 12.008)).toBeLessThan(0.02);
  // Another psychrometer equation than ASHRAE's adiabatic saturation: they differ by a tenth or two.
  expect(Math.abs(wetBulb(20, 60) - 15.144)).toBeLessThan(0.2);
});

test.each(vectors.wetBulb)('wet bulb at $T C and $RH %', ({ T, RH, psychrometer }) => {
  expect(Math.abs(wetBulb(T, RH) - psychrometer)).toBeLessThan(0.02);
});
