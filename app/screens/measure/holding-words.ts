import { amountOfStep, mostSteps, stepOfAmount } from '../../model/measure-draft.ts';
import type { PaintCard } from '../../model/paint.ts';
import type { PatchMeaning } from '../../model/paint-measure.ts';

const steps = Array.from({ length: mostSteps }, (_, n) => n + 1);

/** A value of the choice 'what it holds'. */
export function holdingValue(is: PatchMeaning | null): string {
  if (!is) return 'none';
  if (is.kind === 'black') return 'black';
  if (is.kind === 'half') return `half:${is.with}`;
  return `${is.kind}:${stepOfAmount(is.amount)}`;
}

export function meaningOf(value: string): PatchMeaning | null {
  const cut = value.indexOf(':');
  const kind = cut < 0 ? value : value.slice(0, cut);
  const rest = value.slice(cut + 1);
  if (kind === 'step' || kind === 'over-black') return { kind, amount: amountOfStep(Number(rest)) };
  if (kind === 'black') return { kind };
  if (kind === 'half') return { kind, with: rest };
  return null;
}

export interface HoldingChoices {
  readonly name: string;
  readonly choices: readonly { readonly is: PatchMeaning | null; readonly text: string }[];
}

const stepText = (step: number): string => (step === 1 ? 'Step 1, the strongest' : `Step ${step}`);

/** Everything a frame may hold, in groups; `others` are the paints it may be mixed with. */
export function holdingChoices(others: readonly PaintCard[]): readonly HoldingChoices[] {
  const isWhite = ({ ci }: PaintCard): boolean => ci.some((name) => name.startsWith('PW'));
  const halves = [...others.filter(isWhite), ...others.filter((card) => !isWhite(card))];
  return [
    {
      name: 'The ladder',
      choices: steps.map((step) => ({
        is: { kind: 'step', amount: amountOfStep(step) } as const,
        text: stepText(step),
      })),
    },
    {
      name: 'The black line',
      choices: [
        { is: { kind: 'black' } as const, text: 'The black line itself' },
        ...steps.slice(0, 4).map((step) => ({
          is: { kind: 'over-black', amount: amountOfStep(step) } as const,
          text: `Step ${step} over the black line`,
        })),
      ],
    },
    {
      name: 'Half and half with',
      choices: halves.map(({ id, name }) => ({
        is: { kind: 'half', with: id } as const,
        text: `Half ${name}`,
      })),
    },
    { name: 'Nothing', choices: [{ is: null, text: 'Not used' }] },
  ];
}
