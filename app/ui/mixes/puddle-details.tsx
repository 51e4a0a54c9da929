import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { cssColour } from '../../core/colour/lab.ts';
import type { LaidMix, MixNeighbour, MixNeighbours, NeighbourWay } from '../../core/paint/mix.ts';
import { type Mix, mixesBelow, surfaceOf, type WashPlan } from '../../core/plan/plan.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { additionInWords, partsInNumbers, wetLook } from '../../core/words/paint/mix-words.ts';
import { valueInWords } from '../../core/words/values.ts';
import type { PaintCalls } from '../../state/painting/screen-calls.ts';
import { Button } from '../controls/button.tsx';
import { ChoiceRow } from '../controls/choice-row.tsx';
import { mixWordsIn } from './mix-words-in.ts';
import styles from './puddle-list.module.css';
import { ValueHelp } from './value-help.tsx';

/** What puddles are shown from. */
export interface PuddleSource {
  plan: WashPlan;
  /** Family id -> what it is called. */
  familyName: (family: number) => string;
  /** Left out: the mixes next to a puddle are not offered. */
  calls?: PaintCalls;
  /** Left out: nothing is said of how much to mix. */
  sheet?: Reading['sheet'] | undefined;
  /** Only each puddle at its strongest: for the darkest touches. */
  strongest?: boolean;
}

interface PuddleDetailsProps extends PuddleSource {
  uses: readonly Mix[];
}

/** A puddle in whole parts, and what lies next to it. */
export function PuddleDetails({ uses, plan, familyName, calls }: PuddleDetailsProps) {
  const chosen = useSignal(uses[0]?.id ?? '');
  const mix = uses.find(({ id }) => id === chosen.value) ?? uses[0];
  if (!mix) return null;
  return (
    <div class={styles.details}>
      <p class="quiet">
        {mix.parts.length > 1
          ? `Parts ${partsInNumbers(mix.parts)} of paint from the tube, in the order named.`
          : 'One paint, nothing mixed in.'}
      </p>
      {calls && uses.length > 1 && (
        <ChoiceRow
          label="The colour this mix is for"
          choices={uses.map(({ id, family }) => [id, familyName(family)])}
          chosen={mix.id}
          onChoose={(next) => {
            chosen.value = next;
          }}
        />
      )}
      {calls && (
        <MixesNextTo
          key={mix.id}
          calls={calls}
          plan={plan}
          below={mixesBelow(plan, mix)}
          mix={mix}
        />
      )}
      <ValueHelp />
    </div>
  );
}

interface MixesNextToProps {
  calls: PaintCalls;
  plan: Pick<WashPlan, 'palette' | 'optics' | 'surface'>;
  below: readonly LaidMix[];
  mix: LaidMix;
}

/** The ways to go from a mix, each with what to add and how it comes out beside the mix. */
function MixesNextTo({ calls, plan, below, mix }: MixesNextToProps) {
  const way = useSignal<NeighbourWay | null>(null);
  const { found, problem } = useNeighbours(calls, plan, below, mix);
  if (problem) return <p role="alert">{problem}</p>;
  if (!found) return <p class="quiet">Looking for the mixes next to it …</p>;
  const shown = found.neighbours.find((each) => each.way === way.value);
  return (
    <section class="stack" aria-label="Mixes next to it">
      <div class={styles.found} role="status">
        <span class={styles.pair} aria-hidden="true">
          <span style={{ background: cssColour(found.dry) }} />
          <span style={{ background: cssColour((shown ?? found).dry) }} />
        </span>
        {shown ? (
          <Neighbour neighbour={shown} inWords={mixWordsIn(plan)(shown.parts)} />
        ) : (
          <span class="quiet">
            This mix. Touch the way you want to go: what to add, and its colour beside this one.
          </span>
        )}
      </div>
      <div class={styles.ways}>
        {found.neighbours.map((each) => (
          <Button
            key={each.way}
            aria-pressed={each.way === way.value}
            onClick={() => {
              way.value = each.way === way.value ? null : each.way;
            }}
          >
            {each.way}
          </Button>
        ))}
      </div>
    </section>
  );
}

function Neighbour({ neighbour, inWords }: { neighbour: MixNeighbour; inWords: string }) {
  const { parts, consistency, dry, wet, add } = neighbour;
  return (
    <span>
      <strong class={styles.add}>{additionInWords(add)}</strong>
      <br />
      {inWords}
      {parts.length > 1 && ` (${partsInNumbers(parts)})`}, as {consistency}
      <br />
      <span class="quiet">
        dries to {valueInWords(dry[0])}; {wetLook(dry, wet)}
      </span>
    </span>
  );
}

interface FoundNeighbours {
  readonly found: MixNeighbours | null;
  /** A sentence for the painter; null while all is well. */
  readonly problem: string | null;
}

/** The mixes next to one, asked for once; the next of the caller's mixes wants a new key. */
function useNeighbours(
  calls: PaintCalls,
  plan: Pick<WashPlan, 'optics' | 'surface'>,
  below: readonly LaidMix[],
  { parts, load }: LaidMix,
): FoundNeighbours {
  const neighbours = useSignal<FoundNeighbours>({ found: null, problem: null });
  useEffect(() => {
    const controller = new AbortController();
    const { optics } = plan;
    calls.mixNeighbours(controller.signal, optics, below, { parts, load }, surfaceOf(plan)).then(
      (found) => {
        if (!controller.signal.aborted) neighbours.value = { found, problem: null };
      },
      () => {
        if (controller.signal.aborted) return;
        const problem =
          'The mixes next to it could not be worked out. Close this and open it again.';
        neighbours.value = { found: null, problem };
      },
    );
    return () => controller.abort();
  }, [calls, plan.optics, JSON.stringify([below, parts, load])]);
  return neighbours.value;
}
