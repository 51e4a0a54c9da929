import { useId } from 'preact/hooks';
import {
  amountOfStep,
  type DraftPatch,
  mostSteps,
  type PatchMeaning,
  stepOfAmount,
} from '../../core/paint/measure/paint-measure.ts';
import type { PaintCard } from '../../core/paint/paint.ts';
import { Button } from '../../ui/controls/button.tsx';
import select from '../../ui/controls/select.module.css';
import styles from './patch-list.module.css';

interface PatchListProps {
  draft: readonly DraftPatch[];
  groups: readonly HoldingChoices[];
  onChange: (draft: readonly DraftPatch[]) => void;
}

/** What each frame holds. */
export function PatchList({ draft, groups, onChange }: PatchListProps) {
  const listId = useId();
  return (
    <ol class={styles.rows}>
      {draft.map((patch, n) => (
        <li key={n} class={styles.row}>
          <div class={styles.field}>
            <label for={`${listId}-${n}`}>Frame {n + 1}</label>
            <select
              id={`${listId}-${n}`}
              class={select.select}
              value={holdingValue(patch.is)}
              onChange={(event) => {
                const is = meaningOf(event.currentTarget.value);
                onChange(draft.map((each, i) => (i === n ? { ...each, is } : each)));
              }}
            >
              {groups.map(({ name, choices }) => (
                <optgroup key={name} label={name}>
                  {choices.map(({ is, text }) => (
                    <option key={text} value={holdingValue(is)}>
                      {text}
                    </option>
                  ))}
                </optgroup>
              ))}
            </select>
          </div>
          <Button
            aria-label={`Take away frame ${n + 1}`}
            onClick={() => onChange(draft.filter((_, i) => i !== n))}
          >
            Take away
          </Button>
        </li>
      ))}
    </ol>
  );
}

const steps = Array.from({ length: mostSteps }, (_, n) => n + 1);

/** A value of the choice 'what it holds'. */
export function holdingValue(is: PatchMeaning | null): string {
  if (!is) return 'none';
  if (is.kind === 'black') return 'black';
  if (is.kind === 'half') return `half:${is.with}`;
  return `${is.kind}:${stepOfAmount(is.amount)}`;
}

function meaningOf(value: string): PatchMeaning | null {
  const cut = value.indexOf(':');
  const kind = cut < 0 ? value : value.slice(0, cut);
  const rest = value.slice(cut + 1);
  if (kind === 'step' || kind === 'over-black') return { kind, amount: amountOfStep(Number(rest)) };
  if (kind === 'black') return { kind };
  if (kind === 'half') return { kind, with: rest };
  return null;
}

interface HoldingChoices {
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
      name: 'The steps',
      choices: steps.map((step) => ({
        is: { kind: 'step', amount: amountOfStep(step) } as const,
        text: stepText(step),
      })),
    },
    {
      name: 'The black line',
      choices: [
        { is: { kind: 'black' } as const, text: 'The black line itself' },
        ...steps.map((step) => ({
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
