import { expect, test } from 'vitest';
import type { Painting } from '../../../../app/core/decisions/painting.ts';
import { emptyBox, type OwnBox, withTick } from '../../../../app/core/paint/own-box.ts';
import type { WashPlan } from '../../../../app/core/plan/plan.ts';
import { handedPlan, keepTheirs } from '../../../../app/state/painting/handed-plan.ts';
import { paintingSample, planSample } from '../../../support/storage/kept-samples.ts';
import { madeBox } from '../../../support/storage/made-backup.ts';

const [hersToo] = madeBox.paints; // 'my blue', measured by the teacher
if (!hersToo) throw new Error('The made box has no paint of its own.');

const theirs = {
  ...planSample('theirs'),
  palette: [{ id: hersToo.id, why: '' }],
  optics: [hersToo],
} as unknown as WashPlan;

const handed: Painting = {
  ...paintingSample('meadow', 'photo'),
  planIds: ['theirs'],
  handedOn: { planId: 'theirs', decisions: 0 },
};

/** What is said to a student with that box, before and after the teacher's paints are kept. */
async function told(box: OwnBox): Promise<{ before: string; after: string; box: OwnBox }> {
  let now = box;
  const standIns = async () => [
    { theirs: hersToo?.id ?? '', yours: 'pb29-ultramarine-blue', sentence: '' },
  ];
  const needs = {
    store: { planById: async () => theirs },
    client: { standIns } as unknown as Parameters<typeof handedPlan>[3]['client'],
  };
  const stands = (painting: Painting) =>
    handedPlan(new AbortController().signal, { painting, plan: theirs, families: [] }, now, needs);
  const asked = await stands(handed);
  if (asked?.kind !== 'asked') throw new Error('Whose paints it takes is not asked.');
  const decisions: Painting['decisions'][number][] = [];
  const note = async (made: object) =>
    void decisions.push({ id: `d${decisions.length}`, at: 1, ...made } as never);
  await keepTheirs(
    { painting: { value: handed }, note, decide: note } as unknown as Parameters<
      typeof keepTheirs
    >[0],
    {
      box: {
        get value() {
          return now;
        },
      } as unknown as Parameters<typeof keepTheirs>[1]['box'],
      change: async (how) => {
        now = how(now);
      },
    },
    asked,
  );
  const kept = await stands({ ...handed, decisions });
  if (kept?.kind !== 'theirs') throw new Error('The teacher’s paints are not kept.');
  return { before: asked.measured, after: kept.measured, box: now };
}

test('that a paint the teacher measured comes into the box is said before and after, and it is not ticked', async () => {
  const { before, after, box } = await told(withTick(emptyBox, 'pb29-ultramarine-blue', true));
  expect(before).toBe(
    'My blue is the teacher’s own paint: kept, it comes into your box, not ticked.',
  );
  expect(after).toBe('My blue is the teacher’s own paint: it came into your box, not ticked.');
  expect(box.owned).toEqual(['pb29-ultramarine-blue']);
  expect(box.paints.map(({ id }) => id)).toEqual([hersToo.id]);
});

test('who has ticked nothing is told that it counts as hers until she does', async () => {
  const { after } = await told(emptyBox);
  expect(after).toBe(
    'My blue is the teacher’s own paint: it came into your box, and counts as yours until you tick your paints.',
  );
});
