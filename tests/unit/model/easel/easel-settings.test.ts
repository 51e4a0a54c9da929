import { expect, test } from 'vitest';
import { easelSettingsOf, quietEasel } from '../../../../app/model/easel-settings.ts';

test('nothing is heard before she asks for it', () => {
  expect(easelSettingsOf(null)).toEqual(quietEasel);
  expect(quietEasel).toMatchObject({ sound: false, voice: false });
});

test.each([[undefined], ['loud'], [7], [[]], [{ sound: 'yes', voice: 1, hand: 'both' }]])(
  'what can not be understood is left out: %j',
  (kept) => {
    expect(easelSettingsOf(kept)).toEqual(quietEasel);
  },
);

test('what was kept comes back', () => {
  const kept = { sound: true, voice: true, hand: 'left', letterKeys: false } as const;
  expect(easelSettingsOf({ ...kept, more: 1 })).toEqual(kept);
});
