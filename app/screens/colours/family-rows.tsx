import { useSignal } from '@preact/signals';
import { cssColour } from '../../core/colour/lab.ts';
import { mostFamilies, mostFamiliesWithSubject } from '../../core/limits.ts';
import type { FamilyColour, FamilyEdit } from '../../core/reading/families/family-edit.ts';
import type { Family } from '../../core/reading/reading.ts';
import { formatPercent } from '../../core/words/reading-words.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';
import { Button } from '../../ui/controls/button.tsx';
import styles from './colours-screen.module.css';
import bar from './share-bar.module.css';

interface FamilyRowsProps {
  families: readonly Family[];
  chosen: readonly number[];
  onToggle: (id: number) => void;
}

/** The colours of the picture in the order they are painted, each with its share as a bar; each can be chosen. */
export function FamilyRows({ families, chosen, onToggle }: FamilyRowsProps) {
  return (
    <ul class={styles.rows}>
      {families.map((family) => (
        <li key={family.id}>
          <button
            type="button"
            class={styles.row}
            aria-pressed={chosen.includes(family.id)}
            onClick={() => onToggle(family.id)}
          >
            <ShareBar family={family} among={families} />
            <span class={styles.name}>{family.name}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}

interface ShareBarProps {
  family: Family;
  /** All that bars are drawn of: the largest fills its place. */
  among: readonly Family[];
}

/** A colour of the picture as a stroke as long as its share of the sheet; the figure is told to a screen reader. */
function ShareBar({ family, among }: ShareBarProps) {
  const most = Math.max(...among.map(({ share }) => share));
  return (
    <span class={bar.place}>
      <span
        class={bar.bar}
        style={{ background: cssColour(family.lab), width: `${(100 * family.share) / most}%` }}
      />
      <span class="spoken">{formatPercent(family.share)} of the sheet, </span>
    </span>
  );
}

interface FamilyActionsProps {
  seen: OpenedReading;
  chosen: readonly number[];
  /** The picture is being read anew: what is seen is not what it will be. */
  reading: boolean;
  onEdit: (edit: FamilyEdit) => void;
}

const colourOf = ({ lab }: Family): FamilyColour => [lab[1], lab[2]];

function hintFor(chosen: number, count: number, most: number): string {
  if (chosen === 2) return 'These two can be joined.';
  if (chosen === 0) return 'Touch a colour, here or in the picture, to see it alone.';
  if (count >= most)
    return `${most} colours are the most. To part this one, make two others one first; or touch a second to join the two.`;
  return 'Split it, or touch a second to join the two.';
}

/** Joins two colours or parts one, and says what can be done. */
export function FamilyActions({ seen, chosen, reading, onEdit }: FamilyActionsProps) {
  /** The last colour she wanted parted, and what was seen then. */
  const asked = useSignal<{ readonly seen: OpenedReading; readonly name: string } | null>(null);
  const { families, subject } = seen.reading;
  const most = subject ? mostFamiliesWithSubject : mostFamilies;
  const [one, other, ...rest] = families.filter(({ id }) => chosen.includes(id));
  const edit = (next: FamilyEdit, parted: Family | null): void => {
    asked.value = parted && { seen, name: parted.name };
    onEdit(next);
  };
  const before = asked.value;
  const failed =
    before !== null &&
    before.seen !== seen &&
    families.length <= before.seen.reading.families.length;
  const pair = one && other && rest.length === 0 ? ([one, other] as const) : null;
  const single = one && !other ? one : null;
  return (
    <>
      <p class={styles.hint} role="status" data-testid="colours-hint">
        {reading
          ? 'The picture follows in a moment …'
          : failed && chosen.length === 0
            ? `No second colour was found in ‘${before.name}’ that is worth a shape of its own.`
            : hintFor(chosen.length, families.length, most)}
      </p>
      <div class={styles.actions}>
        <Button
          disabled={!pair || reading}
          onClick={() => pair && edit({ join: [colourOf(pair[0]), colourOf(pair[1])] }, null)}
        >
          Join
        </Button>
        <Button
          disabled={!single || reading || families.length >= most}
          onClick={() => single && edit({ part: colourOf(single) }, single)}
        >
          Split
        </Button>
      </div>
    </>
  );
}
