import { describe, expect, test } from 'vitest';
import type { Step } from '../../../../../app/core/plan/plan.ts';
import type { Check } from '../../../../../app/core/plan/rules/broken-rule.ts';
import {
  maskFirst,
  maskOff,
  smallWhitesInWet,
  whitesStay,
} from '../../../../../app/core/plan/rules/white-rules.ts';
import { ruledPlan } from '../../../../support/plan/ruled-plan.ts';

const limits = { washes: 3, puddlesPerWash: 2 };
const [first, second, dry] = ['wash/sheet/1', 'wash/sheet/2', 'dry/sheet/1'];
const [mask, unmask] = ['mask/sheet/0', 'unmask/sheet/0'];

/** What a check finds in steps told by their keys: 'step: what'. */
const found = (check: Check, ...keys: string[]): string[] =>
  check(ruledPlan(keys.map((key) => ({ key }))), limits).map(
    ({ step, what }) => `${step}: ${what}`,
  );

describe('masking', () => {
  test('before any wash, on dry paper (R1)', () => {
    expect(found(maskFirst, mask, first)).toEqual([]);
    expect(found(maskFirst, first)).toEqual([]);
    expect(found(maskFirst, first, mask)).toEqual([`${mask}: masked after a wash`]);
    expect(maskFirst(ruledPlan([{ key: mask, paper: 'damp' }]), limits)).toMatchObject([
      { what: 'masked on wet paper' },
    ]);
  });

  /** Washes leave the sheet wet, as the plan's own do. */
  const off = (...keys: string[]) =>
    maskOff(
      ruledPlan(
        keys.map((key) => ({
          key,
          ...(key.startsWith('wash') && { dryMinutes: [20, 60] as const }),
        })),
      ),
      limits,
    ).map(({ what }) => what);

  test.each([
    ['on, washed, dried, off', [mask, first, dry, unmask], []],
    ['never off', [mask, first, dry], ['masked and not unmasked']],
    ['never on', [first, dry, unmask], ['unmasked and not masked']],
    ['off before on', [unmask, mask, first], ['unmasked and not masked', 'a wash comes after']],
    ['off a damp sheet', [mask, first, unmask], ['unmasked before the drying check']],
    [
      'dried before the last wash only',
      [mask, first, dry, second, unmask],
      ['unmasked before the drying check'],
    ],
    ['a wash after it', [mask, first, dry, unmask, second], ['a wash comes after']],
    ['no mask at all', [first, dry], []],
  ])('%s (R12)', (_, keys, wanted) => expect(off(...keys)).toEqual(wanted));
});

test('whites are the paper throughout; where one is lost it is said once', () => {
  const slots = [{ reserve: true }, { reserve: false }, { reserve: true }];
  const lost = (...afters: number[][]) =>
    whitesStay(
      ruledPlan(
        afters.map((own, i) => ({
          key: `wash/sheet/${i}`,
          after: own.map((l) => [l, 0, 2] as const),
        })),
        slots,
      ),
      limits,
    ).map(({ what }) => what);
  expect(lost([95, 40, 95], [95, 30, 95])).toEqual([]);
  expect(lost([95, 40, 95], [95, 30, 60], [95, 30, 60])).toEqual(['2 painted in wash/sheet/1']);
  expect(lost([70, 40, 95])).toEqual(['0 painted in wash/sheet/0']);
});

test('three small whites and more on wet paper want masking (R1)', () => {
  const wants = (count: number, technique: Step['technique'] = 'wet-in-wet') =>
    smallWhitesInWet(ruledPlan([{ key: first, technique }]), {
      ...limits,
      smallWhites: new Map([['sheet', count]]),
    }).length;
  expect([wants(2), wants(3), wants(3, 'wet on dry')]).toEqual([0, 1, 0]);
  expect(smallWhitesInWet(ruledPlan([{ key: first, technique: 'wet-in-wet' }]), limits)).toEqual(
    [],
  );
});
