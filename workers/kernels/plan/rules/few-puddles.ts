import type { Mix, Step } from '../../../../app/model/wash-plan.ts';
import { type BrokenRule, broken, type Check, rowsOf, washesOf } from './broken-rule.ts';

const mostPaints = 3;
const mostParts = 8;

function badMix(step: Step, { id, parts }: Mix): BrokenRule[] {
  const sum = parts.reduce((all, part) => all + part.parts, 0);
  if (parts.length <= mostPaints && sum <= mostParts) return [];
  return [
    broken(
      'puddles',
      step,
      `mix ${id}: too many paints or parts`,
      parts.length > mostPaints
        ? 'More than three paints in one puddle turn to mud.'
        : 'So many parts can not be measured by eye: the puddle comes out otherwise each time.',
    ),
  ];
}

/** At most so many puddles at hand in one wash, each of few paints. */
export const fewPuddles: Check = (plan, { puddlesPerWash }) =>
  washesOf(plan).flatMap((step): BrokenRule[] => {
    const rows = rowsOf(plan, step);
    const names = new Set(rows.flatMap(({ puddle }) => puddle ?? []));
    const many = names.size > puddlesPerWash;
    return [
      ...rows.flatMap((mix) => badMix(step, mix)),
      ...(many
        ? [
            broken(
              'puddles',
              step,
              `${names.size} in ${step.key}`,
              `${names.size} puddles in one wash: while you reach for one another dries, and the brush dirties them all.`,
            ),
          ]
        : []),
    ];
  });
